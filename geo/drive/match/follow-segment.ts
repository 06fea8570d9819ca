import type { Roads } from '../../roads/roads.ts';
import type { BrokenTurn, Leg, Span } from '../drive.ts';
import type { RouteSegment } from '../gpx/route.ts';
import { endOf, offMapLeg, stretchesOf } from '../legs.ts';
import { findBrokenTurns, placeTurn } from './broken-turns.ts';
import { findDoubts } from './doubtful.ts';
import { type RoadGraph, roadGraph } from './graph/graph.ts';
import { type Piece, type Run, tracePath } from './graph/path.ts';
import { type Place, placeOnEdge } from './graph/place.ts';
import { afterRemoval, removeStubs } from './graph/stubs.ts';
import { findGuesses } from './guessed.ts';
import { healBreaks } from './heal.ts';
import { buildLattice } from './lattice.ts';
import type { MatchSettings } from './settings.ts';
import { type Positions, thinPositions } from './thin.ts';
import { findBestChain } from './viterbi.ts';

/** What one unbroken segment of the route adds to the drive. */
export interface FollowedSegment {
  readonly legs: readonly Leg[];
  readonly guessed: readonly Span[];
  readonly doubtful: readonly Span[];
  readonly brokenTurns: readonly BrokenTurn[];
}

/** A run shorter than this touches a road without driving it. */
const TOUCH_M = 1;

/** Matches one unbroken segment; its legs lie along the drive from `startM` on. */
export function followSegment(
  segment: RouteSegment,
  startM: number,
  roads: Roads,
  settings: MatchSettings,
): FollowedSegment {
  const graph = roadGraph(roads);
  const { positions, lattice, chain } = match(segment, roads, graph, settings);

  const legs: Leg[] = [];
  const guessed: Span[] = [];
  const doubtful: Span[] = [];
  const brokenTurns: BrokenTurn[] = [];
  let atM = startM;
  let left: Place[] = [];
  let done = 0;
  for (const run of tracePath(chain, lattice, graph)) {
    const { pieces, removed } = removeStubs(run.pieces, graph);
    const first = pieces[0];
    const last = pieces.at(-1);
    if (first === undefined || last === undefined || lengthOf(pieces) < TOUCH_M) continue;
    // an end away from its road is a yard or a pitch: the way between is off the map
    const away = done === 0 && run.first === 0 && distanceAt(run.first) > settings.offRoadM;
    goOff([
      ...left,
      ...between(done, away ? 1 : run.first),
      placeOnEdge(roads, graph, first.directed, first.fromM),
    ]);
    legs.push(...stretchesOf(pieces, atM, graph));
    const onDrive = ({ fromM, toM }: Span): Span => ({
      fromM: atM + afterRemoval(fromM, removed),
      toM: atM + afterRemoval(toM, removed),
    });
    guessed.push(...findGuesses(run, chain, lattice, roads, graph, settings).map(onDrive));
    doubtful.push(...findDoubts(run, chain, lattice, positions, roads, graph).map(onDrive));
    brokenTurns.push(...findBrokenTurns(pieces, roads, graph).map((turn) => placeTurn(turn, atM, roads)));
    atM = endM();
    left = [placeOnEdge(roads, graph, last.directed, last.toM)];
    done = endsAway(run) ? run.last : run.last + 1;
  }
  goOff([...left, ...between(done, lattice.points)]);
  return { legs, guessed, doubtful, brokenTurns };

  function goOff(places: readonly Place[]): void {
    const leg = offMapLeg(places, atM);
    if (leg === undefined) return;
    legs.push(leg);
    atM = leg.toM;
  }

  function endM(): number {
    const leg = legs.at(-1);
    return leg === undefined ? startM : endOf(leg);
  }

  function between(from: number, to: number): Place[] {
    return placesOf(positions).slice(from, to);
  }

  function distanceAt(i: number): number {
    return lattice.distanceM[chain.state[i]!]!;
  }

  function endsAway(run: Run): boolean {
    return run.last === lattice.points - 1 && distanceAt(run.last) > settings.offRoadM;
  }
}

function match(segment: RouteSegment, roads: Roads, graph: RoadGraph, settings: MatchSettings) {
  const explain = (positions: Positions) => {
    const lattice = buildLattice(positions, roads, graph, settings);
    return { positions, lattice, chain: findBestChain(lattice, positions, roads, graph, settings) };
  };
  const first = explain(thinPositions(segment, settings.thinM));
  if (!settings.recorded) return first;
  const healed = healBreaks(first.positions, first.chain, first.lattice, roads, graph, settings);
  return healed === first.positions ? first : explain(healed);
}

function placesOf(positions: Positions): Place[] {
  return positions.lat.map((lat, i) => ({ lat, lon: positions.lon[i]! }));
}

function lengthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.toM - piece.fromM, 0);
}
