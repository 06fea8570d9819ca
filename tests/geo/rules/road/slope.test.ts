import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { slope } from '../../../../geo/rules/road/slope.ts';
import { askDrive, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { testMap } from '../../../support/drive-on.ts';

const hill = (incline: string, backward = false) => askRoad(slope, { incline }, { backward });

describe('steep roads', () => {
  it('a climb along the drawn order is a descent against it', () => {
    expect(hill('12%')).toMatchObject([
      { level: 'care', subject: 'slope', limit: { value: 12, unit: '%', asMapped: '12%' } },
    ]);
    expect(hill('12%')[0]?.say).toMatch(/^A climb of 12 % over 500 m/);
    expect(hill('12%', true)[0]?.say).toMatch(/^A descent of 12 %/);
    expect(hill('12%', true)[0]?.limit?.value).toBe(-12);
    expect(hill('-12 %', true)[0]?.say).toMatch(/^A climb of 12 %/);
  });

  it.each(['10%', '-10%', '6°', '1:8', '14', '12,5 %', '30%'])('%s is said', (incline) => {
    expect(hill(incline).map(({ level, folded }) => [level, folded])).toEqual([['care', undefined]]);
  });

  it.each(['0%', '9%', '-9.9 %', '5°', '1:12', '0', 'no'])('%s is not', (incline) => {
    expect(hill(incline)).toEqual([]);
  });

  it('up and down without a figure are counted and turn with the drive; steep is shown', () => {
    expect(hill('up').map(({ say, folded }) => [say, folded])).toEqual([
      [expect.stringMatching(/goes up here/), true],
    ]);
    expect(hill('up', true)[0]?.say).toMatch(/goes down here/);
    expect(hill('steep')[0]?.folded).toBeUndefined();
  });

  it.each(['90%', 'Steep!', '12 % up', ''])('"%s" is told as unreadable, never as level', (incline) => {
    expect(hill(incline).map(({ say }) => say)).toEqual([expect.stringMatching(/a slope without a figure/)]);
  });

  it('the slope of something else is not ours', () => {
    expect(askRoad(slope, { 'incline:across': '12%', 'sidewalk:incline': '20%' })).toEqual([]);
  });

  it('a hill over three ways is one finding with its steepest figure', () => {
    const map = testMap(
      ['10%', '16%', '11%'].map((incline, i) => ({
        id: i + 1,
        nodes: [`${i},0`, `${i + 1},0`],
        tags: { highway: 'tertiary', incline },
      })),
    );
    const found = askDrive(slope, map, [1, 2, 3]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ limit: { value: 16 }, tags: { incline: '16%' } });
    expect(found[0]?.say).toMatch(/16 % at its steepest over 300 m/);
  });
});

describe('breaks of grade against the card’s clearances', () => {
  const low = { ...COACHBUILT, rearClearanceM: 0.28, bellyClearanceM: 0.15 };
  const breaks = (tags: readonly Tags[], card = low, steps = tags.map((_, i) => i + 1)) =>
    askDrive(
      slope,
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
