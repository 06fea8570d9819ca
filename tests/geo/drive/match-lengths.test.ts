import { describe, expect, it } from 'vitest';
import { liesElsewhere } from '../../../geo/drive/match-lengths.ts';

describe('a map of another place', () => {
  it('has next to none of the drive on its roads', () => {
    expect(liesElsewhere({ drivenM: 0 }, 5000)).toBe(true);
    expect(liesElsewhere({ drivenM: 99 }, 5000)).toBe(true);
  });

  it('is not told of a drive that lies half off the roads, nor of one without length', () => {
    expect(liesElsewhere({ drivenM: 2500 }, 5000)).toBe(false);
    expect(liesElsewhere({ drivenM: 0 }, 0)).toBe(false);
  });
});
