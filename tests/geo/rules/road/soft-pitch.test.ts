import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { softPitch } from '../../../../geo/rules/road/soft-pitch.ts';
import { area, askAround, road } from '../../../support/ask-around.ts';

const end = (land: Tags) =>
  askAround(softPitch, [road({}), area(9, -1, -1, 6, 1, land)], { steps: [1, { offMapM: 70 }] });

describe('a pitch off the road at the end', () => {
  it('on grass by its land use may be soft: care', () => {
    const [pitch] = end({ landuse: 'grass' });
    expect(pitch).toMatchObject({
      level: 'care',
      subject: 'ground',
      kind: 'pitch',
      tags: { landuse: 'grass' },
    });
    expect(pitch?.say).toMatch(/ends off the road on ground that may be soft/);
    expect(pitch?.osm.at(-1)).toEqual({ type: 'way', id: 9 });
  });

  it('on ground mapped as soft is tight', () => {
    expect(end({ tourism: 'camp_site', surface: 'grass' })).toMatchObject([
      { level: 'tight', kind: 'soft pitch' },
    ]);
  });

  it('on hard ground, or in a street, is none', () => {
    expect(end({ tourism: 'camp_site', surface: 'gravel' })).toEqual([]);
    expect(end({ landuse: 'residential' })).toEqual([]);
  });
});
