import { distanceM, turnDeg } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Span } from '../drive.ts';
import type { RoadGraph } from './graph/graph.ts';
import type { Run } from './graph/path.ts';
import { headingOnEdge, placeOnEdge } from './graph/place.ts';
import { ROAD_CLASS } from './graph/road-class.ts';
import type { Lattice } from './lattice.ts';
import type { Positions } from './thin.ts';
import { type BestChain, CLOSE } from './viterbi.ts';

/** Nearer rivals are the same place seen from another edge, as about a junction. */
const APART_M = 8;
/** Farther from its road than this a position hardly proves it. */
const FAR_M = 25;
const MUCH_NEARER_M = 10;
const SAME_HEADING_DEG = 30;
/** A position speaks for no more than this of the road on either side. */
const REACH_M = 50;

/** Spans of a run, in metres along it, where the match is in doubt. */
export function findDoubts(
  run: Run,
  chain: BestChain,
  lattice: Lattice,
  positions: Positions,
  roads: Roads,
  graph: RoadGraph,
): Span[] {
  const spans: Span[] = [];
  let wasDoubtful = false;
  for (let i = run.first; i <= run.last; i++) {
    const at = run.positionM[i - run.first]!;
    const before = run.positionM[i - run.first - 1] ?? at;
    const after = run.positionM[i - run.first + 1] ?? at;
    if (positions.healed.has(i)) spans.push({ fromM: at, toM: after });
    const doubtful = inDoubt(i);
    if (doubtful)
      spans.push({
        // between two positions in doubt all is in doubt
        fromM: wasDoubtful ? before : at - Math.min(REACH_M, (at - before) / 2),
        toM: at + Math.min(REACH_M, (after - at) / 2),
      });
    wasDoubtful = doubtful;
  }
  return spans;

  function inDoubt(i: number): boolean {
    const chosen = chain.state[i]!;
    const directed = lattice.directed[chosen]!;
    const ferry = graph.roadClass[directed >> 1] === ROAD_CLASS.ferry;
    if (!ferry && lattice.distanceM[chosen]! > FAR_M) return true;
    for (let s = lattice.pointStart[i]!; s < lattice.pointStart[i + 1]!; s++) {
      const rival = lattice.directed[s]!;
      if (rival >= 0 && rival >> 1 === directed >> 1) continue;
      const close = chain.behind[s]! < CLOSE;
      if (close && (rival < 0 || apartM(chosen, s) > APART_M)) return true;
      if (rival >= 0 && meansOtherCarriageway(chosen, s)) return true;
    }
    return false;
  }

  function apartM(a: number, b: number): number {
    const [p, q] = [placeOf(a), placeOf(b)];
    return distanceM(p.lat, p.lon, q.lat, q.lon);
  }

  function placeOf(state: number) {
    return placeOnEdge(roads, graph, lattice.directed[state]!, lattice.offsetM[state]!);
  }

  /**
   * Against a one-way the other carriageway may be meant, however well the wrong one fits a drawn line; and on the
   * legal one, the wrong one may be when the line lies much nearer to it.
   */
  function meansOtherCarriageway(chosen: number, rival: number): boolean {
    const own = lattice.directed[chosen]!;
    const other = lattice.directed[rival]!;
    if (graph.wrongWay[own] === graph.wrongWay[other]) return false;
    const nearerM = lattice.distanceM[chosen]! - lattice.distanceM[rival]!;
    if (graph.wrongWay[own] === 1 ? nearerM < -FAR_M : nearerM < MUCH_NEARER_M) return false;
    const turn = turnDeg(
      headingOnEdge(roads, graph, own, lattice.offsetM[chosen]!),
      headingOnEdge(roads, graph, other, lattice.offsetM[rival]!),
    );
    return turn < SAME_HEADING_DEG;
  }
}
