import type { Place } from '../../earth/sphere.ts';
import { placeOnEdge } from '../../graph/place-on-edge.ts';
import { roadGraph } from '../../graph/road-graph.ts';
import { append } from '../../lists.ts';
import type { Roads } from '../../roads/roads.ts';
import type { BrokenTurn, Leg, Span } from '../drive.ts';
import { endOf } from '../end-of.ts';
import type { RouteSegment } from '../gpx/route.ts';
import { type BestChain, findBestChain } from './best-chain.ts';
import { findBrokenTurns, placeTurn } from './find-broken-turns.ts';
import { findDoubts } from './find-doubts.ts';
import { findGuesses } from './guess/find-guesses.ts';
import { healBreaks } from './heal-breaks.ts';
import { layOut, type Matching } from './lattice.ts';
import { offMapLeg, stretchesOf } from './lay-legs.ts';
import type { MatchSettings } from './match-settings.ts';
import { afterRemoval, removeSpurs } from './remove-spurs.ts';
import { thinPositions } from './thin-positions.ts';
import { type EdgePart, type Path, tracePaths } from './trace-paths.ts';
import { TOUCH_M, trimTouches } from './trim-touches.ts';

/** What one unbroken segment of the route adds to the drive. */
interface FollowedSegment {
  readonly legs: readonly Leg[];
  readonly guessed: readonly Span[];
  readonly doubtful: readonly Span[];
  readonly brokenTurns: readonly BrokenTurn[];
}

/** Matches one unbroken segment; its legs lie along the drive from `startM` on. */
export function followSegment(
  segment: RouteSegment,
  startM: number,
  roads: Roads,
  settings: MatchSettings,
): FollowedSegment {
  const { matching, chain } = match(segment, roads, settings);
  const laying: Laying = {
    matching,
    chain,
    legs: [],
    guessed: [],
    doubtful: [],
    brokenTurns: [],
    atM: startM,
    left: [],
    done: 0,
  };
  for (const path of tracePaths(chain, matching.lattice, matching.graph)) layPath(laying, path);
  goOff(laying, [...laying.left, ...positionsBetween(matching, laying.done, matching.lattice.points)]);
  const { legs, guessed, doubtful, brokenTurns } = laying;
  return { legs, guessed, doubtful, brokenTurns };
}

/** A matched segment being laid along the drive. */
interface Laying {
  readonly matching: Matching;
  readonly chain: BestChain;
  readonly legs: Leg[];
  readonly guessed: Span[];
  readonly doubtful: Span[];
  readonly brokenTurns: BrokenTurn[];
  /** metres along the drive laid so far */
  atM: number;
  /** where the last path left the roads; empty before the first */
  left: readonly Place[];
  /** positions laid so far */
  done: number;
}

/** Lays a path along roads, and before it the way off the map that leads to it. */
function layPath(laying: Laying, path: Path): void {
  const { matching, chain } = laying;
  const { roads, graph, settings, lattice } = matching;
  const { parts, removed } = trimTouches(removeSpurs(path.parts, graph), graph);
  const first = parts[0];
  const last = parts.at(-1);
  if (first === undefined || last === undefined || lengthOf(parts) < TOUCH_M) return;
  // an end away from its road is a yard or a pitch: the way between is off the map
  const isAway = (i: number) => lattice.distanceM[chain.state[i]!]! > settings.offRoadM;
  const startsAway = laying.done === 0 && path.first === 0 && isAway(path.first);
  const endsAway = path.last === lattice.points - 1 && isAway(path.last);
  goOff(laying, [
    ...laying.left,
    ...positionsBetween(matching, laying.done, startsAway ? 1 : path.first),
    placeOnEdge(roads, graph, first.directed, first.fromM),
  ]);
  const startM = laying.atM;
  append(laying.legs, stretchesOf(parts, startM, graph));
  const lengthM = lengthOf(parts);
  const onDrive = ({ fromM, toM }: Span): Span => ({
    fromM: startM + Math.min(lengthM, afterRemoval(fromM, removed)),
    toM: startM + Math.min(lengthM, afterRemoval(toM, removed)),
  });
  append(laying.guessed, findGuesses(matching, chain, path).map(onDrive));
  append(laying.doubtful, findDoubts(matching, chain, path).map(onDrive));
  for (const turn of findBrokenTurns(parts, roads, graph))
    laying.brokenTurns.push(placeTurn(turn, startM, roads));
  const end = laying.legs.at(-1);
  if (end !== undefined) laying.atM = endOf(end);
  laying.left = [placeOnEdge(roads, graph, last.directed, last.toM)];
  laying.done = endsAway ? path.last : path.last + 1;
}

function goOff(laying: Laying, places: readonly Place[]): void {
  const leg = offMapLeg(places, laying.atM);
  if (leg === undefined) return;
  laying.legs.push(leg);
  laying.atM = leg.toM;
}

function positionsBetween({ positions }: Matching, from: number, to: number): Place[] {
  return positions.lat.slice(from, to).map((lat, i) => ({ lat, lon: positions.lon[from + i]! }));
}

function match(
  segment: RouteSegment,
  roads: Roads,
  settings: MatchSettings,
): { readonly matching: Matching; readonly chain: BestChain } {
  const graph = roadGraph(roads);
  const positions = thinPositions(segment, settings.thinM);
  const matching = layOut({ positions, roads, graph, settings });
  const chain = findBestChain(matching);
  if (!settings.recorded) return { matching, chain };
  const healed = healBreaks(matching, chain);
  if (healed === positions) return { matching, chain };
  const again = layOut({ positions: healed, roads, graph, settings });
  return { matching: again, chain: findBestChain(again) };
}

function lengthOf(parts: readonly EdgePart[]): number {
  return parts.reduce((sum, part) => sum + part.toM - part.fromM, 0);
}
