import { describe, expect, it } from 'vitest';
import { sizeFaults } from '../../../geo/vehicle/size-faults.ts';

const SIZES = {
  lengthM: 6.99,
  wheelbaseM: 3.8,
  frontOverhangM: 0.95,
  rearOverhangM: 2.24,
  widthM: 2.3,
  widthMirrorsM: 2.8,
};
const kinds = (change: object) => sizeFaults({ ...SIZES, ...change }).map(({ kind }) => kind);

describe('the sizes of a card', () => {
  it('go together, within two centimetres over the length', () => {
    expect(kinds({})).toEqual([]);
    expect(kinds({ lengthM: 7.01 })).toEqual([]);
    expect(kinds({ lengthM: 7.02 })).toEqual(['parts and length']);
  });

  it('cannot have mirrors inside the body, or wider folded than unfolded', () => {
    expect(kinds({ widthMirrorsM: 2.2 })).toEqual(['mirrors narrower than body']);
    expect(kinds({ widthMirrorsFoldedM: 2.9 })).toEqual(['folded wider than unfolded']);
  });

  it('cannot turn in a radius read as a circle; between walls the nose counts', () => {
    expect(sizeFaults({ ...SIZES, turningCircleM: 7 })).toEqual([
      { kind: 'circle too small', field: 'turningCircleM', circleM: 7, wheelbaseM: 3.8 },
    ]);
    expect(kinds({ turningCircleM: 12, turningCircleWallM: 13 })).toEqual([]);
  });

  it('are held against each other as far as they are typed', () => {
    expect(sizeFaults({ lengthM: 9 })).toEqual([]);
    expect(sizeFaults({ turningCircleM: 7 })).toEqual([]);
  });
});
