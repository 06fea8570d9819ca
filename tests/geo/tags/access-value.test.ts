import { describe, expect, it } from 'vitest';
import { onlyCloses } from '../../../geo/tags/access-value.ts';

describe('a value only closes', () => {
  it.each(['no', 'no|no', 'no;no', 'no @ (Su)', 'no @ (Su); no @ (22:00-06:00)'])('%s', (text) => {
    expect(onlyCloses(text)).toBe(true);
  });

  it.each([
    'yes',
    'no|yes',
    'no;destination',
    'no @ (Su); yes @ (22:00-06:00)',
    'destination @ wet',
    'no @ Mo no @',
  ])('not %s', (text) => {
    expect(onlyCloses(text)).toBe(false);
  });

  it('of any length, in a time that grows with it', () => {
    expect(onlyCloses(`no @ ${'a'.repeat(600_000)}`)).toBe(true);
  });
});
