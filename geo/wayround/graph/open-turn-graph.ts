import { findForbiddenTurns } from '../../graph/forbidden-turns.ts';
import { cutFurther, cutIntoEdges } from '../../graph/road-edges.ts';
import { type RoadGraph, roadGraphBuilt } from '../../graph/road-graph.ts';
import type { Roads } from '../../roads/roads.ts';
import { layTurns } from './lay-turns.ts';
import { splitNodes } from './split-nodes.ts';
import { layStates } from './states.ts';
import type { TurnGraph } from './turn-graph.ts';
import { wayWords } from './way-words.ts';

const built = new WeakMap<Roads, TurnGraph>();

/**
 * The turn graph of an opened map, built at the first call and kept as long as the roads are.
 * @param lookUp called now and then; what it throws ends the building, and nothing is kept
 */
export function turnGraph(roads: Roads, lookUp: () => void = () => {}): TurnGraph {
  const known = built.get(roads);
  if (known !== undefined) return known;
  const there = roadGraphBuilt(roads);
  const edges =
    there === undefined
      ? cutIntoEdges(roads, splitNodes(roads))
      : cutFurther(roads, there, splitNodes(roads));
  lookUp();
  const graph: RoadGraph = { ...edges, forbidden: findForbiddenTurns(roads, edges) };
  lookUp();
  const states = layStates(graph, roads, wayWords(roads));
  const turns = { ...graph, ...states.laid, ...layTurns(graph, roads, states, lookUp) };
  built.set(roads, turns);
  return turns;
}
