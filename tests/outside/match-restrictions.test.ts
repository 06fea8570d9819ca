/**
 * What each value of a turn restriction forbids, as the OSM wiki's page Relation:restriction describes it
 * (from memory, to be confirmed against the page).
 */
import { describe, expect, it } from 'vitest';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { type At, mapOf, track } from '../geo/drive/match/sketch.ts';

/** A crossroads of four ways; the drive comes in from the south on way 1. */
const ARMS: Readonly<Record<string, At>> = {
  s: [0, -400],
  n: [0, 400],
  w: [-400, 0],
  e: [400, 0],
  x: [0, 0],
};
const WAY_TO = { left: 2, straight: 3, right: 4, back: 1 } as const;
const END: Readonly<Record<Direction, At>> = {
  left: [-390, 0],
  straight: [0, 390],
  right: [390, 0],
  back: [0, -390],
};
type Direction = keyof typeof WAY_TO;

function forbids(
  restriction: string,
  to: Direction,
  driven: Direction,
  more: Readonly<Record<string, string>> = {},
) {
  const roads = mapOf(
    ARMS,
    [
      { id: 1, refs: ['s', 'x'] },
      { id: 2, refs: ['x', 'w'] },
      { id: 3, refs: ['x', 'n'] },
      { id: 4, refs: ['x', 'e'] },
    ],
    [{ from: 1, via: 'x', to: WAY_TO[to], tags: { restriction, ...more } }],
  );
  return followRoads(track([[0, -390], [0, 0], END[driven]]), roads).brokenTurns.length === 1;
}

describe('turn restrictions', () => {
  it.each([
    ['no_left_turn', 'left'],
    ['no_right_turn', 'right'],
    ['no_straight_on', 'straight'],
    ['no_u_turn', 'back'],
    ['no_entry', 'straight'],
    ['no_exit', 'right'],
  ] as const)('%s forbids its own turn and no other', (restriction, to) => {
    for (const driven of ['left', 'straight', 'right', 'back'] as const)
      expect(forbids(restriction, to, driven), driven).toBe(driven === to);
  });

  it.each([
    ['only_left_turn', 'left'],
    ['only_right_turn', 'right'],
    ['only_straight_on', 'straight'],
  ] as const)('%s forbids the other ways on', (restriction, to) => {
    for (const driven of ['left', 'straight', 'right'] as const)
      expect(forbids(restriction, to, driven), driven).toBe(driven !== to);
  });

  it('exempts the kinds of vehicle named in except', () => {
    expect(forbids('no_left_turn', 'left', 'left', { except: 'bicycle;psv' })).toBe(true);
    expect(forbids('no_left_turn', 'left', 'left', { except: 'psv;motor_vehicle' })).toBe(false);
  });
});
