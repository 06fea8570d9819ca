import type { Reached } from '../../graph/search-roads.ts';
import { type StepCosts, turnBackM } from '../../graph/step-costs.ts';
import { type ChainCosts, leastOf, link, MOVE } from './chain-costs.ts';
import type { Matching } from './lattice.ts';

/** A sweep over the lattice at work. */
export interface ChainWork extends Matching {
  readonly costs: ChainCosts;
  /** searches from single edges, each done once */
  readonly rowOf: (directed: number, limitM: number) => Reached;
}

/** The step from position `i` to the next: from states begin .. mid to states mid .. end. */
export interface ChainStep {
  readonly i: number;
  readonly begin: number;
  readonly mid: number;
  readonly end: number;
  readonly straightM: number;
  /** metres of extra way that weigh one nat */
  readonly betaM: number;
  /** what guides the search between them */
  readonly steps: StepCosts;
  /** metres of detour that a break in the map between the two positions weighs */
  readonly breakM: number;
  /** nats of the cheapest state to start from */
  readonly least: number;
  /** a state dearer than this is beaten by a break from the cheapest one */
  readonly worst: number;
}

/** Nats for starting or ending off the map. */
export const END_OFF = 15;

export function stepBetween({ lattice, costs, settings }: ChainWork, i: number): ChainStep {
  const { pointStart, gapM } = lattice;
  const [begin, mid, end] = [pointStart[i]!, pointStart[i + 1]!, pointStart[i + 2]!];
  const { detourM, detourPerM, sparseM } = settings;
  const straightM = gapM[i]!;
  const far = straightM > settings.farM;
  const betaM = far ? settings.farBetaM : settings.betaM;
  const breakM = detourM + Math.min(straightM, sparseM) + detourPerM * Math.max(0, straightM - sparseM);
  const least = costs.cost[leastOf(costs, begin, mid)]!;
  const steps = far ? settings.farSteps : settings.steps;
  return { i, begin, mid, end, straightM, betaM, steps, breakM, least, worst: least + breakM / betaM };
}

/** Extra metres for driving part of a directed edge. */
export type ExtraM = (directed: number, fromM: number, toM: number) => number;

/** Links two states on one edge; false when the one does not lead to the other within it. */
export function linkOnEdge(
  { lattice, graph, settings, costs }: ChainWork,
  { straightM, betaM, steps }: ChainStep,
  from: number,
  to: number,
  extraM?: ExtraM,
): boolean {
  const { directed, offsetM } = lattice;
  const { jitterM } = settings;
  const a = directed[from]!;
  const b = directed[to]!;
  const startM = offsetM[from]!;
  if (a === b) {
    const endM = offsetM[to]!;
    if (endM < startM - jitterM) return false;
    const drivenM = Math.max(0, endM - startM);
    const extra = drivenM > 0 ? (extraM?.(a, startM, endM) ?? 0) : 0;
    link(costs, from, to, (Math.abs(drivenM - straightM) + extra) / betaM, MOVE.same);
    return true;
  }
  if (a !== (b ^ 1)) return false;
  const endM = graph.lengthM[a >> 1]! - offsetM[to]!;
  const drivenM = Math.abs(endM - startM);
  const extra =
    turnBackM(graph, steps, a) + (extraM?.(a, Math.min(startM, endM), Math.max(startM, endM)) ?? 0);
  link(costs, from, to, (Math.abs(drivenM - straightM) + extra) / betaM, MOVE.turnBack);
  return true;
}
