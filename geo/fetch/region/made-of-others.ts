import type { Region, RegionIndex } from './region.ts';
import { holds } from './touch.ts';

/** Corners of an outline looked at to tell whether it lies in another. */
const CORNERS = 24;
/** Outlines of neighbours overlap, and a part's may reach out over its whole a little. */
const LEAST_INSIDE = 0.75;
/** A part is clearly smaller than its whole. */
const SMALLER = 0.9;
/** Parts that make up this much of it leave out water: a country's outline holds the sea off its coast, twice. */
const MADE_OF = 0.5;

/**
 * Whether a region is made of others of the index, so that what of it lies in none of them is water or a strip
 * between two outlines: it has two children at least, or others lie in it and make up most of it, for groupings of
 * countries have no children in the index. A city within a county does not make the county.
 */
export function isMadeOfOthers(whole: Region, { regions }: RegionIndex): boolean {
  if (regions.filter(({ parent }) => parent === whole.id).length > 1) return true;
  let partsKm2 = 0;
  for (const part of regions) {
    if (part === whole || part.areaKm2 > SMALLER * whole.areaKm2 || !mayLieIn(part, whole)) continue;
    if (!liesIn(part, whole)) continue;
    partsKm2 += part.areaKm2;
    if (partsKm2 >= MADE_OF * whole.areaKm2) return true;
  }
  return false;
}

function mayLieIn({ box: a }: Region, { box: b }: Region): boolean {
  return a.west < b.east && a.east > b.west && a.south < b.north && a.north > b.south;
}

function liesIn(part: Region, whole: Region): boolean {
  const corners = part.outline.flatMap(([outer = []]) => outer);
  const every = Math.max(1, Math.floor(corners.length / CORNERS));
  const looked = corners.filter((_, i) => i % every === 0);
  const inside = looked.filter(([lon = 0, lat = 0]) => holds(whole, lat, lon));
  return inside.length >= LEAST_INSIDE * looked.length;
}
