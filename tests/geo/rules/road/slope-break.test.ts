import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { slopeBreak } from '../../../../geo/rules/road/slope-break.ts';
import { askDrive, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

describe('breaks of grade against the card’s clearances', () => {
  const low = { ...COACHBUILT, rearClearanceM: 0.28, bellyClearanceM: 0.15 };
  const breaks = (tags: readonly Tags[], card = low, steps = tags.map((_, i) => i + 1)) =>
    askDrive(
      slopeBreak,
      testMap(
        tags.map((one, i) => ({
          id: i + 1,
          nodes: [`${i},0`, `${i + 1},0`],
          tags: { highway: 'service', ...one },
        })),
      ),
      steps,
      card,
    ).filter(({ id }) => id.includes('break'));

  // 0.28 m under a tail of 2.05 m: 13.7 %
  it('from the level up a ramp of 15 % the tail may touch; of 13 % it clears', () => {
    expect(breaks([{}, { incline: '15%' }]).map(({ level }) => level)).toEqual(['care']);
    expect(breaks([{}, { incline: '15%' }])[0]?.say).toMatch(/tail clears 1 in 8 only/);
    expect(breaks([{}, { incline: '13%' }])).toEqual([]);
  });

  it('a slope nobody mapped is not called a figure', () => {
    expect(breaks([{}, { incline: '15%' }])[0]?.say).toBe(
      'The road bends up from the level (no slope is mapped) to 15 % if the break is sharp; the tail clears 1 in 8 only.',
    );
    expect(breaks([{ incline: '0%' }, { incline: '15%' }])[0]?.say).toMatch(/bends up from 0 % to 15 %/);
    expect(breaks([{ incline: '-15%' }, {}])[0]?.say).toMatch(
      /from -15 % to the level \(no slope is mapped\)/,
    );
  });

  it('on a public road, laid out in curves, it is counted only', () => {
    const lane = { highway: 'unclassified' };
    expect(breaks([lane, { ...lane, incline: '15%' }]).map(({ folded }) => folded)).toEqual([true]);
    expect(breaks([{}, { incline: '15%' }])[0]?.folded).toBeUndefined();
  });

  it('off the foot of a descent it may touch likewise, whichever way the road is drawn', () => {
    expect(breaks([{ incline: '-15%' }, {}])).toHaveLength(1);
    expect(breaks([{}, { incline: '15%' }], low, [-2, -1])).toHaveLength(1);
  });

  it('two inclines add up where they meet', () => {
    expect(breaks([{ incline: '-8%' }, { incline: '8%' }])).toHaveLength(1);
    expect(breaks([{ incline: '8%' }, { incline: '13%' }])).toEqual([]);
  });

  // 2 atan(2 · 0.15 / 4) = 8.6°, some 15 %
  it('over a crest the belly may touch', () => {
    expect(breaks([{ incline: '10%' }, { incline: '-10%' }]).map(({ say }) => say)).toEqual([
      expect.stringMatching(/belly/),
    ]);
    expect(breaks([{ incline: '7%' }, { incline: '-7%' }])).toEqual([]);
  });

  it('a fitted rack lengthens the tail', () => {
    const rack = { lengthM: 0.8, widthM: 1.5, fitted: true };
    expect(breaks([{}, { incline: '11%' }])).toEqual([]);
    expect(breaks([{}, { incline: '11%' }], { ...low, rack } as typeof low)).toHaveLength(1);
    expect(
      breaks([{}, { incline: '11%' }], { ...low, rack: { ...rack, fitted: false } } as typeof low),
    ).toEqual([]);
  });

  it('without clearances on the card, and where an incline has no figure, nothing is said', () => {
    expect(breaks([{}, { incline: '20%' }], COACHBUILT as typeof low)).toEqual([]);
    expect(breaks([{ incline: 'up' }, { incline: '20%' }])).toEqual([]);
  });
});
