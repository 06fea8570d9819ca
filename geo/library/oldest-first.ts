import type { Parents } from './heads.ts';

/**
 * Versions of one item in an order in which each stands behind all that came before it: taken away in this order, what
 * is left never has a newest version that was none. Names that cannot be true, which name each other in a circle, are
 * left out.
 */
export function oldestFirst(known: Parents): string[] {
  const waitsFor = new Map<string, number>();
  const children = new Map<string, string[]>();
  for (const [name, parents] of known) {
    const there = [...new Set(parents)].filter((parent) => known.has(parent));
    waitsFor.set(name, there.length);
    for (const parent of there) children.set(parent, [...(children.get(parent) ?? []), name]);
  }
  const order = [...known.keys()].filter((name) => waitsFor.get(name) === 0);
  for (const name of order)
    for (const child of children.get(name) ?? []) {
      const left = waitsFor.get(child)! - 1;
      waitsFor.set(child, left);
      if (left === 0) order.push(child);
    }
  return order;
}
