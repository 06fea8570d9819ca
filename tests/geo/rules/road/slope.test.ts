import { describe, expect, it } from 'vitest';
import { slope } from '../../../../geo/rules/road/slope.ts';
import { askDrive, askRoad } from '../../../support/ask.ts';
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

  it.each(['Steep!', '12 % up', ''])('"%s" is told as unreadable, never as level', (incline) => {
    expect(hill(incline).map(({ say }) => say)).toEqual([expect.stringMatching(/a slope without a figure/)]);
  });

  it('a figure no road has is unknown with its text, never level and never steep', () => {
    expect(hill('90%')).toMatchObject([
      { level: 'unknown', wants: 'sign', say: '"incline=90%" is not believed as a slope.' },
    ]);
    expect(hill('90%')[0]?.folded).toBeUndefined();
  });

  it('driven against its drawing says what the tag says and what the drive meets', () => {
    expect(askRoad(slope, { incline: '-11%' }, { backward: true })[0]?.say).toBe(
      'A climb of 11 % over 500 m. It is mapped the other way round ("incline=-11%"), as the road is drawn.',
    );
    expect(hill('12.4%')[0]?.say).toBe('A climb of 12.4 % over 500 m.');
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
