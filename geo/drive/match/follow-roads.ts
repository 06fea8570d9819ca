import { distanceM, type Place } from '../../earth/sphere.ts';
import { append } from '../../lists.ts';
import type { Roads } from '../../roads/roads.ts';
import type { BrokenTurn, Drive, Leg, Span } from '../drive.ts';
import { endOf } from '../end-of.ts';
import type { Route, RouteSegment } from '../gpx/route.ts';
import { joinSpans } from '../join-spans.ts';
import { chooseSettings } from './choose-settings.ts';
import { followSegment } from './follow-segment.ts';
import type { MatchSettings } from './match-settings.ts';

/** Segments whose ends lie this close are one: some programs write a drive leg by leg. */
const SAME_PLACE_M = 1;
/** Spans this close are told as one. */
const SPAN_BRIDGE_M = 30;

/**
 * Works out which roads a route uses: a hidden Markov model of the positions (Newson & Krumm 2009), joined by node
 * only. Pure and deterministic; time grows with the route, not with the map.
 *
 * One-ways, turn restrictions and roads closed to motor traffic guide the match and never decide it. Where no mapped road
 * explains the positions the drive is off the map there, and the jump between two segments is a gap.
 * `lookUp` among the options is called at every position: a caller that throws from it gives the match up.
 */
export function followRoads(route: Route, roads: Roads, options: Partial<MatchSettings> = {}): Drive {
  const legs: Leg[] = [];
  const guessed: Span[] = [];
  const doubtful: Span[] = [];
  const brokenTurns: BrokenTurn[] = [];
  let atM = 0;
  let before: RouteSegment | undefined;
  for (const segment of joinTouching(route.segments)) {
    if (before !== undefined) legs.push(gapBetween(before, segment, atM));
    before = segment;
    const settings = { ...chooseSettings(route.kind, segment, roads), ...options };
    const followed = followSegment(segment, atM, roads, settings);
    append(legs, followed.legs);
    append(guessed, followed.guessed);
    append(doubtful, followed.doubtful);
    append(brokenTurns, followed.brokenTurns);
    const last = legs.at(-1);
    if (last !== undefined) atM = endOf(last);
  }
  return {
    lengthM: atM,
    legs,
    guessed: joinSpans(guessed, SPAN_BRIDGE_M),
    doubtful: joinSpans(doubtful, SPAN_BRIDGE_M),
    brokenTurns,
  };
}

function gapBetween(before: RouteSegment, after: RouteSegment, atM: number): Leg {
  const from = placeOf(before, before.lat.length - 1);
  const to = placeOf(after, 0);
  return { kind: 'gap', atM, straightM: distanceM(from.lat, from.lon, to.lat, to.lon), from, to };
}

/** Segments that touch made one each, in order. */
function joinTouching(segments: readonly RouteSegment[]): RouteSegment[] {
  const groups: RouteSegment[][] = [];
  for (const segment of segments) {
    if (segment.lat.length === 0) continue;
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group !== undefined && last !== undefined && touches(last, segment)) group.push(segment);
    else groups.push([segment]);
  }
  return groups.map((group) => (group.length === 1 ? group[0]! : joinAll(group)));
}

function touches(before: RouteSegment, after: RouteSegment): boolean {
  const from = placeOf(before, before.lat.length - 1);
  const to = placeOf(after, 0);
  return distanceM(from.lat, from.lon, to.lat, to.lon) <= SAME_PLACE_M;
}

function joinAll(segments: readonly RouteSegment[]): RouteSegment {
  const count = segments.reduce((sum, { lat }) => sum + lat.length, 0);
  const joined = {
    lat: new Float64Array(count),
    lon: new Float64Array(count),
    timeMs: new Float64Array(count),
  };
  let at = 0;
  for (const { lat, lon, timeMs } of segments) {
    joined.lat.set(lat, at);
    joined.lon.set(lon, at);
    joined.timeMs.set(timeMs, at);
    at += lat.length;
  }
  return joined;
}

function placeOf({ lat, lon }: RouteSegment, i: number): Place {
  return { lat: lat[i]!, lon: lon[i]! };
}
