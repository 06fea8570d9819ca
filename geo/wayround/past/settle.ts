import type { Finding } from '../../report/finding.ts';
import { layNotes } from '../noted/lay-notes.ts';
import { addTo, emptyOverlay, type Overlay, turnKey } from '../search/overlay.ts';
import type { Nothing, Terms } from '../search/question.ts';
import { type FoundDetour, findDetour, questionPast, type Stretch } from './find-detour.ts';
import { isDoubt, type JudgedWay, judgeNearWay, judgeWay, type Lessons, learn } from './judge-way.ts';
import type { Trip } from './trip.ts';

/** Searches and checks in turn, at most so often: each time the check found what no road's own tags tell. */
const MOST_TRIES = 12;
/** With a legal way in hand, so many more to weigh corners and bridges. */
const MOST_WEIGHED = 2;

/** What a settled search comes to: a way that the whole trip's check passes, or what was seen in vain. */
export type Settled = { readonly way: JudgedWay } | { readonly way: undefined; readonly nothing: Nothing };

/** Lessons that begin with the findings to be passed: their roads are absent, in the direction driven. */
export function firstLessons(trip: Trip, findings: readonly Finding[], doubtFree: boolean): Lessons {
  const overlay = notedOverlay(trip);
  for (const finding of findings) barFinding(trip, finding, overlay);
  return { overlay, learnt: new Set(), doubtFree };
}

/** Prices with what the firm knows laid over them, and nothing learnt yet. */
export function notedOverlay({ field, localNotes }: Trip): Overlay {
  const overlay = emptyOverlay();
  layNotes(overlay, { costs: field.costs, notes: localNotes });
  return overlay;
}

const SAME_PLACE_M = 0.5;

function barFinding({ steps }: Trip, { fromM, toM }: Finding, overlay: Overlay): void {
  for (const [i, step] of steps.entries()) {
    const next = steps[i + 1];
    if (toM - fromM > SAME_PLACE_M) {
      if (Math.min(step.toM, toM) - Math.max(step.fromM, fromM) > SAME_PLACE_M)
        addTo(overlay.edges, step.directed, Number.POSITIVE_INFINITY);
    } else if (next !== undefined && Math.abs(step.toM - fromM) < SAME_PLACE_M)
      addTo(overlay.turns, turnKey(step.directed, next.directed), Number.POSITIVE_INFINITY);
    else if (step.fromM + SAME_PLACE_M < fromM && step.toM - SAME_PLACE_M > fromM)
      addTo(overlay.edges, step.directed, Number.POSITIVE_INFINITY);
  }
}

interface SettleOptions {
  /** how the search is asked; left out, for the best way */
  readonly asks?: typeof questionPast;
  /** searches after the first legal way, to weigh what the check said of it */
  readonly weighed?: number;
  /** asked of a way found before any check of it; what does not suit ends the search */
  readonly differs?: (found: FoundDetour) => boolean;
  /** asked before the whole trip is checked, which is the dear part */
  readonly suits?: (way: JudgedWay) => boolean;
}

/**
 * The best way past a stretch that the check of the whole trip lets by. What the check bars is absent from the next
 * search; what it says of bridges, zones and corners is priced, until the best way is one whose every price is known.
 * Until then the check looks at the way and the drive close to it alone.
 */
export function settle(
  trip: Trip,
  stretch: Stretch,
  terms: Terms,
  lessons: Lessons,
  {
    asks = questionPast,
    weighed = MOST_WEIGHED,
    differs = () => true,
    suits = () => true,
  }: SettleOptions = {},
): Settled {
  const legal: JudgedWay[] = [];
  let nothing: Nothing = { states: undefined, reached: [], settled: 0, gaveUp: true };
  for (let tries = 0; tries < MOST_TRIES && legal.length <= weighed; tries++) {
    const found = findDetour(trip, asks(trip, stretch, terms, lessons.overlay));
    if ('states' in found) {
      nothing = found;
      break;
    }
    if (!differs(found)) break;
    const near = judgeNearWay(trip, found);
    const passes = isPassed(near, lessons);
    if (passes) legal.push(near);
    if (!learn(trip, near, lessons)) break;
  }
  // dearest prices first learnt may make an earlier way the better one: by its cost with all that is known
  const ranked = legal.sort((a, b) => knownCost(a, lessons) - knownCost(b, lessons));
  for (const near of ranked) {
    if (!suits(near)) continue;
    const whole = judgeWay(trip, near.detour);
    if (isPassed(whole, lessons)) return { way: whole };
    learn(trip, whole, lessons);
  }
  return { way: undefined, nothing };
}

function isPassed({ bars, findings }: JudgedWay, { doubtFree }: Lessons): boolean {
  return bars.length === 0 && !(doubtFree && findings.some(isDoubt));
}

/** A way's cost as it was found, and what was learnt of its roads since. */
function knownCost({ detour, extraS }: JudgedWay, { overlay }: Lessons): number {
  return detour.parts.reduce((sum, { directed }) => sum + (overlay.edges.get(directed) ?? 0), extraS * 10);
}
