import { largest } from '../../lists.ts';
import { type Chosen, type Found, NOISE } from './found.ts';
import type { Remedies, Remedy } from './remedies.ts';
import { changed } from './row.ts';

/**
 * One set that cures, not always the smallest: step by step the one that takes most off what is over.
 * @returns empty where that leads nowhere
 */
export function greedy({ over, handled, drained }: Remedies): Found[] {
  let now = over;
  const chosen: Chosen[] = [];
  const emptied = drained.filter((tank) => {
    const after = changed(now, tank.changePerL, tank.litres);
    if (excess(after) >= excess(now)) return false;
    now = after;
    return true;
  });
  const left = new Set(handled);
  while (excess(now) > NOISE) {
    let best: (Chosen & { readonly after: readonly number[] }) | undefined;
    for (const each of left)
      for (const remedy of each.remedies) {
        const after = changed(now, remedy.change);
        if (excess(after) < excess(best?.after ?? now) - NOISE) best = { handled: each, remedy, after };
      }
    if (best === undefined) return [];
    chosen.push({ handled: best.handled, remedy: best.remedy });
    left.delete(best.handled);
    now = best.after;
  }
  const massOf = (kind: Remedy['kind']) =>
    chosen.reduce((sum, { handled: { item }, remedy }) => sum + (remedy.kind === kind ? item.massKg : 0), 0);
  return [
    {
      leftKg: massOf('leave') + emptied.reduce((sum, { litres, kgPerL }) => sum + litres * kgPerL, 0),
      movedKg: massOf('move'),
      chosen,
      drained: emptied.map((tank) => ({ tank, litres: tank.litres })),
      leastSpareKg: -largest(now.slice(0, 3)),
    },
  ];
}

function excess(over: readonly number[]): number {
  return over.reduce((sum, kg) => sum + Math.max(0, kg), 0);
}
