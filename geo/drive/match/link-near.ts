import type { Reached } from '../../graph/search-roads.ts';
import { link, MOVE } from './chain-costs.ts';
import { type ChainStep, type ChainWork, linkOnEdge } from './chain-step.ts';

/** Links the states of two positions that lie close: by what is driven between them against the straight distance. */
export function linkNear(work: ChainWork, step: ChainStep): void {
  const { begin, mid, end, straightM, betaM, worst } = step;
  const { lattice, graph, costs, rowOf } = work;
  const { directed, offsetM } = lattice;
  for (let from = begin; from < mid; from++) {
    const a = directed[from]!;
    if (a < 0 || costs.cost[from]! > worst) continue;
    const restM = graph.lengthM[a >> 1]! - offsetM[from]!;
    // what the state may still spend before a break from the best state would be cheaper
    const budgetM = (worst - costs.cost[from]!) * betaM;
    const limitM = straightM + budgetM - restM;
    let row: Reached | undefined;
    for (let to = mid; to < end; to++) {
      const b = directed[to]!;
      if (b < 0 || linkOnEdge(work, step, from, to) || limitM < 0) continue;
      row ??= rowOf(a, limitM);
      const entry = row.indexOf.get(b);
      if (entry === undefined) continue;
      const metres = row.metres[entry]!;
      const drivenM = restM + metres + offsetM[to]!;
      const weighedM = Math.abs(drivenM - straightM) + (row.costM[entry]! - metres);
      if (weighedM <= budgetM) link(costs, from, to, weighedM / betaM, MOVE.roads);
    }
  }
}
