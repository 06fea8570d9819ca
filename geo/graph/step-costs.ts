import type { RoadEdges } from './road-edges.ts';
import type { RoadGraph } from './road-graph.ts';

/** Extra metres that guide a search. */
export interface StepCosts {
  readonly turnBackM: number;
  /** a turn that a restriction forbids */
  readonly forbiddenTurnM: number;
  /** turning into, or round in, a one-way against its direction */
  readonly enterWrongWayM: number;
  /** per metre driven against a one-way */
  readonly wrongWayPerM: number;
  /** per metre, by ROAD_CLASS */
  readonly classPerM: readonly number[];
}

/** Extra cost of turning round on a directed edge. */
export function turnBackM(edges: RoadEdges, steps: StepCosts, from: number): number {
  return steps.turnBackM + enterM(edges, steps, from, from ^ 1);
}

/** Extra cost of driving from one directed edge into the next, the turn itself apart. */
function enterM(edges: RoadEdges, steps: StepCosts, from: number, next: number): number {
  return edges.wrongWay[next] === 1 && edges.wrongWay[from] === 0 ? steps.enterWrongWayM : 0;
}

/** Extra cost of the whole turn from one directed edge into the next: turning round, one-ways, restrictions. */
export function turnM(graph: RoadGraph, steps: StepCosts, from: number, next: number): number {
  const cost = next === (from ^ 1) ? turnBackM(graph, steps, from) : enterM(graph, steps, from, next);
  return graph.forbidden.get(from)?.get(next)?.always === true ? cost + steps.forbiddenTurnM : cost;
}

/** Extra cost per metre of driving a directed edge. */
export function extraPerM(edges: RoadEdges, steps: StepCosts, directed: number): number {
  const ofClass = steps.classPerM[edges.roadClass[directed >> 1]!] ?? 0;
  return edges.wrongWay[directed] === 1 ? ofClass + steps.wrongWayPerM : ofClass;
}
