import { leastWhere } from '../../earth/bisect.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { isSlipRoad, RANK, rankOf } from '../../tags/road-class.ts';
import type { Drive } from '../drive.ts';
import { oncePerDrive } from '../once-per-drive.ts';
import type { DrivenTurn } from './driven-turn.ts';
import { findCorners } from './find-corners.ts';
import { findHairpins } from './find-hairpins.ts';
import { ringPassages, turnsOfRing } from './find-rings.ts';
import { turnLines } from './turn-line.ts';

/** Least angle of a turn off one road into another. Degrees; legs of 10 to 25 m give it to about 7°. */
const LEAST_TURN_DEG = 40;
/** Onto or off a slip road the drawn angle is where two lines meet, not what is steered. Degrees. */
const LEAST_SLIP_DEG = 60;
/** Least angle of a corner within one road, by what the road is built for. Degrees. */
const LEAST_BEND_DEG = 55;
const LEAST_MAIN_BEND_DEG = 75;

/**
 * The turns of a drive that take steering, from the roads it follows: corners at junctions and in narrow roads,
 * hairpins, rings with their flicks, mini-roundabouts, turning back. In driving order; looked up once per drive.
 */
export const findTurns: (drive: Drive, roads: Roads) => readonly DrivenTurn[] = oncePerDrive(lookForTurns);

function lookForTurns(drive: Drive, roads: Roads): DrivenTurn[] {
  return turnLines(drive, roads)
    .flatMap((line) => {
      const passages = ringPassages(line, roads);
      const taken = new Uint8Array(line.atM.length);
      for (const { first, last } of passages) taken.fill(1, first, last + 1);
      const hairpins = findHairpins(line, (i) => taken[i] === 1);
      for (const { fromM, toM } of hairpins)
        for (let i = leastWhere(0, line.atM.length, (at) => line.atM[at]! >= fromM); line.atM[i]! <= toM; i++)
          taken[i] = 1;
      return [
        ...passages.flatMap((passage) => turnsOfRing(line, roads, passage)),
        ...hairpins,
        ...findCorners(line, roads, (i) => taken[i] === 1).flatMap((turn) => sift(turn, roads)),
      ];
    })
    .sort((a, b) => a.fromM - b.fromM || a.toM - b.toM);
}

/** A corner as it is, called what its node says, or nothing where it takes no steering to speak of. */
function sift(turn: DrivenTurn, roads: Roads): DrivenTurn[] {
  const before = mappedOn(roads, turn.entry.way);
  const after = mappedOn(roads, turn.exit.way);
  if (turn.kind === 'u-turn') return [turn];
  if (turn.turnDeg < leastTurnDeg(turn, before, after)) return [];
  if (roads.nodes.tags.get(turn.node)?.['highway'] === 'mini_roundabout')
    return [{ ...turn, kind: 'mini-roundabout' }];
  const [wayBefore, wayAfter] = [isOneway(before), isOneway(after)];
  const acrossMiddle = turn.apartM !== undefined && wayBefore && wayAfter && isSameRoad(before, after);
  return [acrossMiddle ? { ...turn, kind: 'u-turn' } : turn];
}

function leastTurnDeg(turn: DrivenTurn, before: Tags, after: Tags): number {
  if (isSlipRoad(before) !== isSlipRoad(after)) return LEAST_SLIP_DEG;
  if (!isSameRoad(before, after)) return LEAST_TURN_DEG;
  const rank = rankOf(before['highway']);
  // a main road's own bends are laid out for lorries, and a corner in one is a slip of the drawing
  if (turn.kind === 'bend' && rank <= RANK.primary) return Number.POSITIVE_INFINITY;
  return rank >= RANK.trunk && rank <= RANK.tertiary ? LEAST_MAIN_BEND_DEG : LEAST_BEND_DEG;
}

function isOneway(tags: Tags): boolean {
  return tags['oneway'] === 'yes' || tags['oneway'] === '-1';
}

/** One road going on: of one class, with a common number or name, or with none. */
export function isSameRoad(a: Tags, b: Tags): boolean {
  if (a['highway'] !== b['highway']) return false;
  if (a['ref'] !== undefined || b['ref'] !== undefined) return a['ref'] === b['ref'];
  return a['name'] === b['name'];
}
