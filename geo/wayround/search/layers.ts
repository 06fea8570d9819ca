import { OPEN } from '../price/judged.ts';
import { GROUND } from '../price/road-judge.ts';

/**
 * Roads for those who have business there ("destination", private ground, a yard's own roads) may be used where the
 * drive begins and where it ends, and nowhere between. No price says that; layers do, exactly. A state is an edge in a
 * layer:
 *
 * - `restrictedStart`: every road so far was restricted · `siteStart`: every road so far was restricted or a site's
 * - `between`: open country, with what may be passed through
 * - `siteEnd`: every road from here on is restricted or a site's · `restrictedEnd`: every road from here on is restricted
 *
 * Moves run down this list and never back. An end layer is entered only where it is needed, so a move leads to one
 * layer at most.
 */
export const LAYER = { restrictedStart: 0, siteStart: 1, between: 2, siteEnd: 3, restrictedEnd: 4 } as const;
export const LAYERS = 5;
/** No layer takes the move. */
export const NO_LAYER = -1;

/** What a move asks: the ground of the edge driven into, who it is open to, and who may pass the point before it. */
export interface Asked {
  readonly ground: number;
  readonly open: number;
  readonly point: number;
}

/** The layer of a drive that begins on an edge. */
export function firstLayer(ground: number): number {
  if (ground === GROUND.restricted) return LAYER.restrictedStart;
  return ground === GROUND.site ? LAYER.siteStart : LAYER.between;
}

/** Whether an edge may stand in a layer at all. */
export function fits(layer: number, ground: number): boolean {
  if (layer === LAYER.between) return true;
  if (layer === LAYER.restrictedStart || layer === LAYER.restrictedEnd) return ground === GROUND.restricted;
  return ground !== GROUND.open;
}

/** The layer after a move; NO_LAYER where the move is not allowed. Points are for those who go to a site, too. */
export function nextLayer(layer: number, { ground, open, point }: Asked): number {
  if (open === OPEN.never || point === OPEN.never) return NO_LAYER;
  const atStart = layer === LAYER.restrictedStart || layer === LAYER.siteStart;
  const started = startLayer(layer, ground);
  const needsRestricted = open === OPEN.atEnds && started !== LAYER.restrictedStart;
  const needsSite = point === OPEN.atEnds && !atStart;
  if (layer === LAYER.restrictedEnd || needsRestricted)
    return ground === GROUND.restricted ? LAYER.restrictedEnd : NO_LAYER;
  if (layer === LAYER.siteEnd || needsSite) return ground === GROUND.open ? NO_LAYER : LAYER.siteEnd;
  return started;
}

function startLayer(layer: number, ground: number): number {
  if (layer === LAYER.restrictedStart && ground === GROUND.restricted) return LAYER.restrictedStart;
  if (layer <= LAYER.siteStart && ground !== GROUND.open) return LAYER.siteStart;
  return LAYER.between;
}
