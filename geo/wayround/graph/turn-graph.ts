import type { RoadGraph } from '../../graph/road-graph.ts';
import type { TurnRestriction } from '../../roads/roads.ts';

/**
 * Roads as a search sees them: states are directed edges, moves are turns (edge-based, since a label at a node is wrong
 * where turns are forbidden).
 *
 * States 0 … 2 × edgeCount are the directed edges themselves; those above are shadows of edges on `via` ways, entered
 * only by a sequence of ways that some restriction begins with, so that no search needs to remember where it came from.
 */
export interface TurnGraph extends RoadGraph {
  readonly stateCount: number;
  /** by state: its directed edge */
  readonly edgeOf: Int32Array;
  /** turns out of state s: turnStart[s] … turnStart[s + 1]) */
  readonly turnStart: Uint32Array;
  /** by turn: the states it leads from and to */
  readonly turnFrom: Int32Array;
  readonly turnTo: Int32Array;
  /** by turn: index into `rules`; 0 where no restriction speaks of it */
  readonly turnRule: Int32Array;
  /** restrictions that speak of a turn, together */
  readonly rules: readonly (readonly TurnRestriction[])[];
  /** turns into state s: inTurn[inStart[s] … inStart[s + 1]) */
  readonly inStart: Uint32Array;
  readonly inTurn: Int32Array;
}
