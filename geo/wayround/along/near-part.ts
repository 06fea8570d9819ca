import type { Drive, Leg, OffMap } from '../../drive/drive.ts';
import { cut, moved } from './cut-legs.ts';
import type { Detour } from './splice.ts';

/** How much of the drive before and behind a way is judged with it: restrictions by way and runs of roads reach so far. */
const NEAR_M = 1500;
/** Longer than any lead-in that still counts as starting on the road (end-runs). Metres. */
const APART_M = 1000;

/**
 * The part of a drive around a way. Where the drive goes on beyond it open country lies there instead, so that nothing
 * passed through is taken for ground that the drive goes to. @returns `byM`: how much nearer its places are to its start
 */
export function nearPart(
  drive: Drive,
  { fromM, toM }: Detour,
): { readonly drive: Drive; readonly byM: number } {
  const lowM = fromM - NEAR_M;
  const highM = toM + NEAR_M;
  const own = drive.legs.flatMap((leg) => cut(leg, lowM, highM));
  const [startM, endM] = [startOf(own[0]), endOf(own.at(-1))];
  const cutAtStart = startM > 0;
  const byM = cutAtStart ? startM - APART_M : 0;
  const legs: Leg[] = own.map((leg) => moved(leg, -byM));
  if (cutAtStart) legs.unshift(open(0));
  if (endM < drive.lengthM) legs.push(open(endM - byM));
  const lengthM = endOf(legs.at(-1));
  return { drive: { lengthM, legs, guessed: [], doubtful: [], brokenTurns: [] }, byM };
}

/** Nowhere near any road: an ocean. */
function open(fromM: number): OffMap {
  return { kind: 'offMap', fromM, toM: fromM + APART_M, lat: [0, 0], lon: [-30, -30] };
}

function startOf(leg: Leg | undefined): number {
  return leg === undefined ? 0 : leg.kind === 'gap' ? leg.atM : leg.fromM;
}

function endOf(leg: Leg | undefined): number {
  return leg === undefined ? 0 : leg.kind === 'gap' ? leg.atM : leg.toM;
}
