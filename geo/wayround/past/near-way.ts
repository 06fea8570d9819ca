import type { Detour } from '../along/splice.ts';
import { questionNear, type Stretch } from './find-detour.ts';
import type { JudgedWay, Lessons } from './judge-way.ts';
import { settle } from './settle.ts';
import type { Trip } from './trip.ts';

/** A way that drops no more of the drive than this beside what is barred keeps enough of it. Metres. */
const LITTLE_M = 1500;
/** What another way has to drop less for it to be worth telling: so much of what the best one drops. */
const LESS_SHARE = 0.8;

/**
 * The way that keeps most of the drive, where the best one leaves much of it out: a drive is mostly wanted for the road it
 * takes. Undefined where there is none, or it would hardly keep more.
 */
export function nearWay(
  trip: Trip,
  stretch: Stretch,
  { overlay, learnt }: Lessons,
  best: JudgedWay,
): JudgedWay | undefined {
  const dropsM = droppedM(best.detour) - (stretch.toM - stretch.fromM);
  if (dropsM <= LITTLE_M) return undefined;
  const lessons = { overlay, learnt: new Set(learnt), doubtFree: false };
  // it may well take the best one's roads, leaving the drive later and coming back to it sooner
  const differs = (way: Detour) => droppedM(way) < LESS_SHARE * droppedM(best.detour);
  return settle(trip, stretch, trip.terms, lessons, { asks: questionNear, differs }).way;
}

/** How much of the drive a way takes the place of. */
export function droppedM({ fromM, toM }: Detour): number {
  return toM - fromM;
}
