import type { Bar } from './bars.ts';
import type { Stretch } from './find-detour.ts';
import type { JudgedWay } from './judge-way.ts';
import { isDoubt } from './judge-way.ts';
import { nearWay } from './near-way.ts';
import { otherWay } from './other-ways.ts';
import { firstLessons, type Settled, settle } from './settle.ts';
import type { Trip } from './trip.ts';

/** So many ways are offered past one bar. */
export const MOST_WAYS = 3;

/**
 * Up to three ways past a bar, best first, every one passed by the check of the whole trip. The quickest one over roads
 * free of doubt is always among them, whatever is preferred, and where the best one drops much of the drive the one that
 * keeps most of it.
 * @param quick the same trip where the time alone counts
 */
export function waysPast(
  trip: Trip,
  quick: Trip,
  bar: Bar,
  { lowM, highM, most = MOST_WAYS }: Pick<Stretch, 'lowM' | 'highM'> & { readonly most?: number },
): Settled & { readonly ways: readonly JudgedWay[] } {
  const stretch = { lowM, highM, fromM: bar.fromM, toM: bar.toM };
  const lessons = firstLessons(trip, bar.findings, false);
  const first = settle(trip, stretch, trip.terms, lessons);
  if (first.way === undefined) {
    if (trip.terms.ferries) return { ...first, ways: [] };
    // by ferry only where there is nothing else
    const byFerry = settle(trip, stretch, { ...trip.terms, ferries: true }, lessons);
    return { ...byFerry, ways: byFerry.way === undefined ? [] : [byFerry.way] };
  }
  const ways: [JudgedWay, ...JudgedWay[]] = [first.way];
  if (most === 1) return { way: first.way, ways };
  // the best way may be free of doubt itself, and then it is the quickest of them where time alone counts
  const asked = trip !== quick || first.way.findings.some(isDoubt);
  const sure = asked ? doubtFree(quick, bar, stretch, first.way) : undefined;
  if (sure !== undefined) ways.push(sure);
  const near = nearWay(trip, stretch, lessons, first.way);
  if (near !== undefined && !ways.some((way) => isSame(way, near))) ways.push(near);
  for (let tries = 0; ways.length < MOST_WAYS && tries < MOST_WAYS - 1; tries++) {
    const next = otherWay(trip, stretch, lessons, ways);
    if (next === undefined) break;
    ways.push(next);
  }
  const kept = ways
    .slice(1)
    .filter((way) => way === sure || way === near || !ways.some((one) => one !== way && isNoWorse(one, way)));
  return {
    way: first.way,
    ways: [first.way, ...kept.sort((a, b) => a.extraS - b.extraS)],
  };
}

function doubtFree(quick: Trip, bar: Bar, stretch: Stretch, first: JudgedWay): JudgedWay | undefined {
  const terms = { ...quick.terms, doubtFree: true };
  const { way } = settle(quick, stretch, terms, firstLessons(quick, bar.findings, true));
  return way === undefined || isSame(way, first) ? undefined : way;
}

function isSame(a: JudgedWay, b: JudgedWay): boolean {
  const edges = ({ detour }: JudgedWay) => detour.parts.map(({ directed }) => directed).join();
  return edges(a) === edges(b);
}

/** No slower, and no more doubts. */
function isNoWorse(a: JudgedWay, b: JudgedWay): boolean {
  const doubts = ({ findings }: JudgedWay) => findings.filter(isDoubt).length;
  return a.extraS <= b.extraS && doubts(a) <= doubts(b);
}
