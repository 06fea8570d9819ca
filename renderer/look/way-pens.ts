/** How a way round is drawn: an ink casing and a core of paper in it, so that none is taken for the drive. */
export const WAY_PENS = {
  whole: { core: {} },
  dashed: { core: { 'stroke-dasharray': '9 5' } },
  dotted: { core: { 'stroke-dasharray': '0.1 6', 'stroke-linecap': 'round' } },
} as const;

const PENS = ['whole', 'dashed', 'dotted'] as const;

/** Ways that stand together are told apart by their pens, too. @param index its place among the ways shown */
export function wayPen(index: number): (typeof PENS)[number] {
  return PENS[index % PENS.length]!;
}
