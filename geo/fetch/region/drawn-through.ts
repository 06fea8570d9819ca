import type { DrawnRoute } from '../../roads/discs.ts';
import { cutLine, type Pieces } from './cut-line.ts';
import { isMadeOfOthers } from './made-of-others.ts';
import type { Region, RegionIndex } from './region.ts';
import { touchedBy } from './touch.ts';

/** What a map of a region costs to fetch. */
export interface Price {
  readonly bytes: number;
  /** guessed from the region's area, since nobody has asked the server yet */
  readonly guessed: boolean;
}

/** A region that the drive runs through. */
export interface Candidate {
  readonly region: Region;
  /** pieces of the line in it, rising */
  readonly pieces: readonly number[];
  /** of smaller regions of the index: what of it lies in none of them is water, or a strip between outlines */
  readonly madeOfOthers: boolean;
}

/** A drive laid over a list of regions; worked out once, whatever the sizes turn out to be. */
export interface DrawnThrough {
  readonly pieces: Pieces;
  readonly candidates: readonly Candidate[];
}

export function drawThrough(index: RegionIndex, route: DrawnRoute): DrawnThrough {
  const pieces = cutLine(route);
  const candidates = touchedBy(index, pieces).map((touched) => ({
    ...touched,
    madeOfOthers: isMadeOfOthers(touched.region, index),
  }));
  return { pieces, candidates };
}

/**
 * Bytes of map per square kilometre of outline: 9,000. From the sizes of eight European files of April 2026 against land
 * areas from memory: 3,400 (Europe) to 12,000 (Germany), a city ten times as much.
 */
const BYTES_PER_KM2 = 9_000;
/** The smallest files: a header and a village. */
const LEAST_BYTES = 200_000;

/** @param sizes bytes of the regions whose size the server told, by region id */
export function priceOf({ id, areaKm2 }: Region, sizes: ReadonlyMap<string, number>): Price {
  const told = sizes.get(id);
  if (told !== undefined) return { bytes: told, guessed: false };
  return { bytes: Math.max(LEAST_BYTES, Math.round(areaKm2 * BYTES_PER_KM2)), guessed: true };
}
