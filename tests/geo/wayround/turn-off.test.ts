import { describe, expect, it } from 'vitest';
import { checkDrive } from '../../../geo/check.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { lastTurnOffs, type TurnOff } from '../../../geo/wayround/turn-off.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import { driveOn, type TestWay, testMap } from '../../support/drive-on.ts';
import { askTurnOff } from '../../support/way-round/ask-turn-off.ts';
import { road } from '../../support/way-round/ask-ways.ts';

/** each is tried against every walk, which takes its time */
const BARS = 40;

/** A street with a bridge of 2.5 m on its third piece. */
const STREET = [
  road(1, ['0,0', '5,0']),
  road(2, ['5,0', '10,0']),
  road(3, ['10,0', '12,0'], { maxheight: '2.5' }),
  road(4, ['12,0', '20,0']),
];

function turnOffOn(
  more: readonly TestWay[],
  nodeTags: Readonly<Record<string, Tags>> = {},
): TurnOff | undefined {
  const map = testMap([...STREET, ...more], nodeTags);
  const check = {
    route: { kind: 'track' as const, name: '', number: 1, segments: [] },
    file: 'drive.gpx',
    drive: driveOn(map, [1, 2, 3, 4]),
    roads: map.roads,
    card: COACH_BUILT,
    program: 'test',
    made: '2027-01-01T00:00:00Z',
  };
  const told = [...lastTurnOffs({ check, report: checkDrive(check) }).values()];
  expect(told).toHaveLength(1);
  return told[0];
}

describe('the last place to turn off before a bar', () => {
  it('is the last junction that a way on leaves from, with the road to take', () => {
    const around = road(5, ['5,0', '5,3', '15,3', '15,0', '20,0'], { name: 'Long Lane' });
    const told = turnOffOn([around]);
    expect(told).toMatchObject({ leads: 'on', side: 'left', onto: 'Long Lane' });
    expect(told?.atM).toBeCloseTo(500, -1);
  });

  it('is not a dead end, though nearer', () => {
    const told = turnOffOn([road(5, ['5,0', '5,3', '20,3', '20,0']), road(6, ['10,0', '10,-3'])]);
    expect(told?.atM).toBeCloseTo(500, -1);
  });

  it('is a dead end with room to turn at its end, which leads back', () => {
    const told = turnOffOn([road(6, ['10,0', '10,-3'])], { '10,-3': { highway: 'turning_circle' } });
    expect(told).toMatchObject({ leads: 'back', side: 'right' });
    expect(told?.atM).toBeCloseTo(1000, -1);
  });

  it('is a turning circle on the road itself', () => {
    expect(turnOffOn([], { '5,0': { highway: 'turning_circle' } })).toMatchObject({
      leads: 'back',
      side: 'round',
    });
  });

  it('is none where no road leads off', () => {
    expect(turnOffOn([])).toBeUndefined();
  });
});

it('is where trying every walk over the raw tags says it is, for planted bars', () => {
  const wrong: unknown[] = [];
  let asked = 0;
  const places = { none: 0, some: 0 };
  for (let seed = 1; asked < BARS; seed++) {
    const answer = askTurnOff(seed);
    if (answer === undefined) continue;
    asked++;
    const { told, tried } = answer;
    places[tried === 'none' ? 'none' : 'some']++;
    const same = told === tried || (typeof told === 'number' && Math.abs(told - Number(tried)) < 0.01);
    if (!same) wrong.push({ seed, told, tried });
  }
  expect(wrong.slice(0, 5)).toEqual([]);
  expect(places.some).toBeGreaterThan(BARS / 2);
  expect(places.none).toBeGreaterThan(0);
});
