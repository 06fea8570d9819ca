import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { carriagewayOf, unreadableWidth } from '../../../geo/tags/carriageway.ts';

// What a row of parked cars takes is common practice, no source: 2 m lengthwise, 1 m half on the kerb, 4 m askew, 4.5 m square.
describe('cars parked on a carriageway', () => {
  const parkedM = (tags: Tags) => carriagewayOf({ width: '7', ...tags })?.parkedM;

  it.each([
    [{ 'parking:left': 'lane' }, 2],
    [{ 'parking:left': 'lane', 'parking:left:orientation': 'diagonal' }, 4],
    [{ 'parking:both': 'lane', 'parking:both:orientation': 'perpendicular' }, 9],
    [{ 'parking:right': 'half_on_kerb' }, 1],
    [{ 'parking:right': 'street_side', 'parking:right:orientation': 'perpendicular' }, 0],
    [{ 'parking:lane:both': 'parallel' }, 4],
    [{ 'parking:lane:left': 'parallel', 'parking:lane:left:parallel': 'half_on_kerb' }, 1],
    [{ 'parking:lane:left': 'parallel', 'parking:lane:left:parallel': 'on_kerb' }, 0],
    [{ 'parking:lane:left': 'inline' }, 2],
    [{ 'parking:lane:right': 'diagonal' }, 4],
    [{ 'parking:lane:right': 'perpendicular' }, 4.5],
    [{ 'parking:lane:right': 'orthogonal' }, 4.5],
    [{ 'parking:both': 'no' }, 0],
  ] as readonly (readonly [Tags, number])[])('by %o take %d m of it', (tags, metres) => {
    expect(parkedM(tags)).toBe(metres);
  });

  it('are in the effective width already', () => {
    expect(carriagewayOf({ 'width:effective': '4.5', 'parking:both': 'lane' })).toMatchObject({
      widthM: 4.5,
      parkedM: 0,
    });
  });
});

describe('a width that says nothing', () => {
  it('is told by its key, with the reason where it is not believed', () => {
    expect(unreadableWidth({ width: 'narrow' })).toEqual({ key: 'width', text: 'narrow' });
    expect(unreadableWidth({ width: '400' })).toMatchObject({
      key: 'width',
      text: '400',
      why: expect.any(String),
    });
    expect(unreadableWidth({ width: 'narrow', est_width: '3' })).toBeUndefined();
    expect(unreadableWidth({ width: '3.5' })).toBeUndefined();
    expect(unreadableWidth({})).toBeUndefined();
  });
});
