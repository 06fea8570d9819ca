import type { Strip } from '../strip.ts';

const STUB_APART_PX = 5;
const ACROSS_APART_PX = 9;
/** Two towns' names nearer than this would stand on one another. */
export const TOWN_APART_PX = 18;

/** Where side roads stand closer than ink can, a main one is drawn before others. */
export function stubsApart(stubs: Strip['stubs'], pxPerM: number): Strip['stubs'] {
  const last = { left: Number.NEGATIVE_INFINITY, right: Number.NEGATIVE_INFINITY };
  const lastMain = { ...last };
  return stubs.filter(({ atM, side, main }) => {
    if ((atM - lastMain[side]) * pxPerM < STUB_APART_PX) return false;
    if (!main && (atM - last[side]) * pxPerM < STUB_APART_PX) return false;
    last[side] = atM;
    if (main) lastMain[side] = atM;
    return true;
  });
}

/** What crosses the road, the first of those that stand too close; a bridge with its height always. */
export function crossingApart<T extends { readonly atM: number; readonly height?: string }>(
  items: readonly T[],
  pxPerM: number,
): T[] {
  let lastM = Number.NEGATIVE_INFINITY;
  return items.filter(({ atM, height }) => {
    if (height === undefined && (atM - lastM) * pxPerM < ACROSS_APART_PX) return false;
    lastM = atM;
    return true;
  });
}

/** The larger places first; a smaller one that would stand on another is left out. */
export function townsApart(towns: Strip['towns'], pxPerM: number): Strip['towns'] {
  const kept: Strip['towns'][number][] = [];
  for (const town of [...towns].sort((a, b) => b.size - a.size))
    if (kept.every(({ atM }) => Math.abs(atM - town.atM) * pxPerM >= TOWN_APART_PX)) kept.push(town);
  return kept;
}
