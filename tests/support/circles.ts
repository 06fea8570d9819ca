/**
 * Circles in a directed graph: groups of nodes each of which is reached from every other one of its group, none for a
 * node alone. Tarjan's strongly connected components (1972).
 */
export function circlesIn(links: Iterable<readonly [string, string]>): string[][] {
  const next = new Map<string, string[]>();
  for (const [from, to] of links) next.set(from, [...(next.get(from) ?? []), to]);
  const order = new Map<string, number>();
  const least = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  const visit = (node: string): number => {
    const own = order.size;
    order.set(node, own);
    least.set(node, own);
    open.push(node);
    for (const to of next.get(node) ?? []) {
      if (!order.has(to)) visit(to);
      if (open.includes(to)) least.set(node, Math.min(least.get(node) ?? own, least.get(to) ?? own));
    }
    if (least.get(node) === own) {
      const group = open.splice(open.indexOf(node));
      if (group.length > 1) circles.push(group.sort());
    }
    return own;
  };
  for (const node of next.keys()) if (!order.has(node)) visit(node);
  return circles;
}
