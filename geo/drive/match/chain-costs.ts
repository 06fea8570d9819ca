import type { Lattice } from './lattice.ts';

/** How a state is come to from one of the position before. */
export const MOVE = { roads: 0, same: 1, turnBack: 2, off: 3 } as const;
type MoveKind = (typeof MOVE)[keyof typeof MOVE];

/** Another road this close in likelihood (nats) explains the positions about as well. */
export const CLOSE = 3;

/** What the sweep over the lattice has found, by state: the likeliest chain that ends there. */
export interface ChainCosts {
  /** as in the lattice */
  readonly emission: readonly number[];
  /** nats of the likeliest chain up to the state; Infinity while none is known */
  readonly cost: Float64Array;
  /** state before it on that chain, -1 at the start */
  readonly back: Int32Array;
  /** the MOVE that leads from there */
  readonly how: Uint8Array;
  /** by state: the directed edges driven before it, where the search was not one from a single edge */
  readonly fills: Map<number, readonly number[]>;
  /** for the sweep backwards: no transition behind its target's best by more than CLOSE can come close in the end */
  readonly links: { readonly from: number[]; readonly to: number[]; readonly price: number[] };
}

export function createCosts({ directed, emission }: Lattice): ChainCosts {
  return {
    emission,
    cost: new Float64Array(directed.length).fill(Infinity),
    back: new Int32Array(directed.length).fill(-1),
    how: new Uint8Array(directed.length),
    fills: new Map(),
    links: { from: [], to: [], price: [] },
  };
}

/** Notes that state `to` can be come to from state `from` at a price in nats. */
export function link(costs: ChainCosts, from: number, to: number, price: number, kind: MoveKind): void {
  const { cost, links } = costs;
  const before = cost[from]!;
  if (before === Infinity) return;
  const total = before + price + costs.emission[to]!;
  if (total > cost[to]! + CLOSE) return;
  links.from.push(from);
  links.to.push(to);
  links.price.push(price);
  if (total >= cost[to]!) return;
  cost[to] = total;
  costs.back[to] = from;
  costs.how[to] = kind;
}

/** The cheapest state of begin .. end; -1 when there is none. */
export function leastOf({ cost }: ChainCosts, begin: number, end: number): number {
  let best = begin;
  for (let state = begin + 1; state < end; state++) if (cost[state]! < cost[best]!) best = state;
  return end > begin ? best : -1;
}

/** By state: nats that the likeliest chain through it is behind one of `total` nats. @param last first state of the last position */
export function behindBest({ cost, emission, links }: ChainCosts, last: number, total: number): Float64Array {
  const onward = new Float64Array(cost.length).fill(Infinity);
  onward.fill(0, last);
  for (let k = links.from.length - 1; k >= 0; k--) {
    const from = links.from[k]!;
    const to = links.to[k]!;
    const through = links.price[k]! + emission[to]! + onward[to]!;
    if (through < onward[from]!) onward[from] = through;
  }
  return onward.map((rest, state) => rest + cost[state]! - total);
}
