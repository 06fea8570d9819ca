import { turnDeg } from '../../earth/angles.ts';
import { distanceM } from '../../earth/sphere.ts';
import { headingOnEdge, placeOnEdge } from '../../graph/place-on-edge.ts';
import { isForOthers, ROAD_CLASS } from '../../graph/road-class.ts';
import type { Span } from '../drive.ts';
import type { BestChain } from './best-chain.ts';
import { CLOSE } from './chain-costs.ts';
import type { Matching } from './lattice.ts';
import type { Path } from './trace-paths.ts';

/** Nearer rivals are the same place seen from another edge, as about a junction. */
const APART_M = 8;
/** Farther from its road than this a position hardly proves it. */
const FAR_M = 25;
const MUCH_NEARER_M = 10;
/** An open road that is farther by less than this may be meant instead of one closed to motor traffic. */
const OPEN_BESIDE_M = 10;
const SAME_HEADING_DEG = 30;
/** A position speaks for no more than this of the road on either side. */
const REACH_M = 50;

/** Spans of a path, in metres along it, where the match is in doubt. */
export function findDoubts(matching: Matching, chain: BestChain, path: Path): Span[] {
  const spans: Span[] = [];
  let wasDoubtful = false;
  for (let i = path.first; i <= path.last; i++) {
    const at = path.positionM[i - path.first]!;
    const before = path.positionM[i - path.first - 1] ?? at;
    const after = path.positionM[i - path.first + 1] ?? at;
    if (matching.positions.healed.has(i)) spans.push({ fromM: at, toM: after });
    const doubtful = isDoubtful(matching, chain, i);
    if (doubtful)
      spans.push({
        // between two positions in doubt all is in doubt
        fromM: wasDoubtful ? before : at - Math.min(REACH_M, (at - before) / 2),
        toM: at + Math.min(REACH_M, (after - at) / 2),
      });
    wasDoubtful = doubtful;
  }
  return spans;
}

function isDoubtful(matching: Matching, chain: BestChain, i: number): boolean {
  const { lattice, graph } = matching;
  const chosen = chain.state[i]!;
  const directed = lattice.directed[chosen]!;
  const ferry = graph.roadClass[directed >> 1] === ROAD_CLASS.ferry;
  if (!ferry && lattice.distanceM[chosen]! > FAR_M) return true;
  for (let state = lattice.pointStart[i]!; state < lattice.pointStart[i + 1]!; state++) {
    const rival = lattice.directed[state]!;
    if (rival >= 0 && rival >> 1 === directed >> 1) continue;
    const close = chain.behind[state]! < CLOSE;
    if (close && (rival < 0 || apartM(matching, chosen, state) > APART_M)) return true;
    const meant =
      rival >= 0 &&
      (meansOtherCarriageway(matching, chosen, state) || meansOpenRoad(matching, chosen, state));
    if (meant && runsAlong(matching, chosen, state)) return true;
  }
  return false;
}

/** Metres between the places of two states. */
function apartM({ lattice, roads, graph }: Matching, a: number, b: number): number {
  const placeOf = (state: number) =>
    placeOnEdge(roads, graph, lattice.directed[state]!, lattice.offsetM[state]!);
  const [p, q] = [placeOf(a), placeOf(b)];
  return distanceM(p.lat, p.lon, q.lat, q.lon);
}

/**
 * Against a one-way the other carriageway may be meant, however well the wrong one fits a drawn line; and on the
 * legal one, the wrong one may be when the line lies much nearer to it.
 */
function meansOtherCarriageway({ lattice, graph }: Matching, chosen: number, rival: number): boolean {
  const own = lattice.directed[chosen]!;
  const other = lattice.directed[rival]!;
  if (graph.wrongWay[own] === graph.wrongWay[other]) return false;
  const nearerM = lattice.distanceM[chosen]! - lattice.distanceM[rival]!;
  return graph.wrongWay[own] === 1 ? nearerM > -FAR_M : nearerM > MUCH_NEARER_M;
}

/** A road closed to motor traffic, or a path, beside an open road: the drive may well be on that. */
function meansOpenRoad({ lattice, graph }: Matching, chosen: number, rival: number): boolean {
  const isForOthersAt = (state: number) => isForOthers(graph.roadClass[lattice.directed[state]! >> 1]!);
  const fartherM = lattice.distanceM[rival]! - lattice.distanceM[chosen]!;
  return isForOthersAt(chosen) && !isForOthersAt(rival) && fartherM < OPEN_BESIDE_M;
}

/** Whether the roads of two states run the same way there. */
function runsAlong({ lattice, roads, graph }: Matching, a: number, b: number): boolean {
  const heading = (state: number) =>
    headingOnEdge(roads, graph, lattice.directed[state]!, lattice.offsetM[state]!);
  return turnDeg(heading(a), heading(b)) < SAME_HEADING_DEG;
}
