/** Something that covers some items at a cost. */
export interface Coverer {
  readonly items: readonly number[];
  /** above zero; zero for what is there already */
  readonly cost: number;
}

/**
 * Coverers that together cover every item that any of them does, at little cost: greedy by cost per weight newly
 * covered, tried once from each coverer as the first, what became redundant dropped, the cheapest kept.
 *
 * With equal weights never dearer than H(n) = 1 + 1/2 + … + 1/n times the least possible, n the items of the largest
 * coverer: V. Chvátal, A greedy heuristic for the set-covering problem, Mathematics of Operations Research 4 (1979).
 * @param weightOf what an item counts
 * @returns indices, rising
 */
export function coverAll(coverers: readonly Coverer[], weightOf: (item: number) => number): number[] {
  let best = withoutRedundant(coverers, greedy(coverers, weightOf, []));
  for (const first of coverers.keys()) {
    const tried = withoutRedundant(coverers, greedy(coverers, weightOf, [first]));
    if (costOf(coverers, tried) < costOf(coverers, best)) best = tried;
  }
  return best.sort((a, b) => a - b);
}

function costOf(coverers: readonly Coverer[], chosen: readonly number[]): number {
  return chosen.reduce((sum, at) => sum + coverers[at]!.cost, 0);
}

function greedy(
  coverers: readonly Coverer[],
  weightOf: (item: number) => number,
  begun: readonly number[],
): number[] {
  const chosen = [...begun];
  const open = new Set(coverers.flatMap(({ items }) => items));
  for (const at of begun) for (const item of coverers[at]!.items) open.delete(item);
  while (open.size > 0) {
    let best = -1;
    let bestPrice = Infinity;
    for (const [at, { items, cost }] of coverers.entries()) {
      let gained = 0;
      for (const item of items) if (open.has(item)) gained += weightOf(item);
      const price = gained > 0 ? cost / gained : Infinity;
      if (price < bestPrice) [best, bestPrice] = [at, price];
    }
    // nothing of weight is left
    if (best < 0) break;
    chosen.push(best);
    for (const item of coverers[best]!.items) open.delete(item);
  }
  return chosen;
}

/** Without those of which the others cover everything, the dearest first. */
function withoutRedundant(coverers: readonly Coverer[], chosen: readonly number[]): number[] {
  const times = new Map<number, number>();
  for (const at of chosen)
    for (const item of coverers[at]!.items) times.set(item, (times.get(item) ?? 0) + 1);
  const kept = new Set(chosen);
  for (const at of [...chosen].sort((a, b) => coverers[b]!.cost - coverers[a]!.cost)) {
    const { items } = coverers[at]!;
    if (!items.every((item) => times.get(item)! > 1)) continue;
    kept.delete(at);
    for (const item of items) times.set(item, times.get(item)! - 1);
  }
  return [...kept];
}
