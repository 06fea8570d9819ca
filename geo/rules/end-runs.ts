import type { Leg, Span, Stretch } from '../drive/drive.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import { accessConditions, accessDoubts, accessFor } from '../tags/access.ts';
import type { Reach } from '../tags/conditional/context.ts';
import type { Driven } from '../tags/driven.ts';
import { isSiteRoad } from '../tags/road-class.ts';
import type { Place } from './places.ts';
import type { RuleInput } from './rule.ts';
import { TOUCHING_M } from './run.ts';

/** A yard or a pitch beside the road still counts as starting on the road. Metres off the map. */
const LEAD_IN_M = 300;

/**
 * How far the unbroken runs of some kind of road reach from the drive's start and back from its end, and those that a
 * stop lies in. Metres along.
 */
export interface EndRuns {
  readonly startToM: number;
  readonly endFromM: number;
  readonly stops: readonly Span[];
}

/** A drive, its roads, and where on it the vehicle stops. */
export type StoppingDrive = Pick<RuleInput, 'drive' | 'roads' | 'stopsM'>;

function endRuns({ drive, stopsM = [] }: StoppingDrive, belongs: (stretch: Stretch) => boolean): EndRuns {
  const first = reach(drive.legs, belongs);
  const last = reach([...drive.legs].reverse(), belongs);
  return {
    startToM: first?.toM ?? 0,
    endFromM: last?.fromM ?? drive.lengthM,
    stops: stopsM.flatMap((m) => runAbout(drive.legs, m, belongs)),
  };
}

/** The unbroken run that a place on the drive lies in, or touches. */
function runAbout(legs: readonly Leg[], m: number, belongs: (stretch: Stretch) => boolean): Span[] {
  const isIn = (leg: Leg | undefined) => leg?.kind === 'stretch' && belongs(leg);
  const holds = (leg: Leg) =>
    leg.kind === 'stretch' && leg.fromM <= m + TOUCHING_M && leg.toM >= m - TOUCHING_M && belongs(leg);
  const at = legs.findIndex(holds);
  if (at < 0) return [];
  let [first, last] = [at, at];
  while (isIn(legs[first - 1])) first--;
  while (isIn(legs[last + 1])) last++;
  const [from, to] = [legs[first], legs[last]];
  return from?.kind === 'stretch' && to?.kind === 'stretch' ? [{ fromM: from.fromM, toM: to.toM }] : [];
}

/** The last stretch of the run that begins with the first leg. */
function reach(legs: readonly Leg[], belongs: (stretch: Stretch) => boolean): Stretch | undefined {
  let last: Stretch | undefined;
  for (const [index, leg] of legs.entries()) {
    if (leg.kind === 'offMap' && index === 0 && leg.toM - leg.fromM <= LEAD_IN_M) continue;
    if (leg.kind !== 'stretch' || !belongs(leg)) break;
    last = leg;
  }
  return last;
}

/**
 * Runs of ways that carry this very condition, or are restricted anyway: a limit lifted for those who go there is
 * lifted within them.
 */
export function conditionRuns(input: StoppingDrive, key: string, text: string): EndRuns {
  const { roads } = input;
  return endRuns(input, (stretch) => {
    const tags = mappedOn(roads, stretch.way);
    return (
      tags[key] === text || tags[otherWay(key)] === text || isRestricted({ tags, forward: stretch.forward })
    );
  });
}

/** The same key on a way drawn the other way round. */
function otherWay(key: string): string {
  return key.replace(/:(forward|backward)\b/, (_, word) => (word === 'forward' ? ':backward' : ':forward'));
}

/** Runs of restricted ways: within them the drive starts, stops or ends, outside them it passes through. */
export function restrictedRuns(input: StoppingDrive): EndRuns {
  const { roads } = input;
  return endRuns(input, (stretch) =>
    isRestricted({ tags: mappedOn(roads, stretch.way), forward: stretch.forward }),
  );
}

/** As restrictedRuns, roads signed as unsuitable counted in: what such a sign asks of those who go there. */
export function unsuitableRuns(input: StoppingDrive): EndRuns {
  const { roads } = input;
  return endRuns(input, (stretch) => {
    const tags = mappedOn(roads, stretch.way);
    return (
      accessFor({ tags, forward: stretch.forward }).meaning === 'discouraged' ||
      isRestricted({ tags, forward: stretch.forward })
    );
  });
}

/** As restrictedRuns, site roads counted in: what a gate on the way into a site belongs to. */
export function siteRuns(input: StoppingDrive): EndRuns {
  const { roads } = input;
  return endRuns(input, (stretch) => {
    const tags = mappedOn(roads, stretch.way);
    return isSiteRoad(tags) || isRestricted({ tags, forward: stretch.forward });
  });
}

/** Whether a way is one that only those who have business there may use, or perhaps. */
export function isRestricted(driven: Driven): boolean {
  const access = accessFor(driven);
  if (access.meaning !== 'open' && access.meaning !== 'discouraged') return true;
  if (accessDoubts(driven, access).some(({ binding }) => binding === 'motorcar')) return true;
  return accessConditions(driven, 0).some(({ text }) => FOR_SOME.test(text));
}

/** Conditions that let in those who have business there, as a plain `destination` does. */
const FOR_SOME = /destination|customers|guests|visitors|delivery|private|permit|residents?\b/;

/** Whether a driven place belongs to the run at the start, at the end or about a stop of the drive, or is passed through. */
export function reachOf(place: Place, runs: EndRuns): Reach {
  const within =
    place.toM <= runs.startToM + TOUCHING_M ||
    place.fromM >= runs.endFromM - TOUCHING_M ||
    runs.stops.some(({ fromM, toM }) => place.fromM >= fromM - TOUCHING_M && place.toM <= toM + TOUCHING_M);
  return within ? 'within' : 'through';
}
