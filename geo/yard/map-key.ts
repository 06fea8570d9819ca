import type { Box } from '../roads/box.ts';

/** As much of a part of the shelf as tells what it has about a drive. */
interface PartAbout {
  readonly source: { readonly sha256: string };
  /** null without a single road */
  readonly box: Box | null;
}

/**
 * Tells what the shelf holds about a drive: the same text as long as no map there came, went or was renewed.
 * @param about where the drive lies, with what is read about it
 */
export function mapKey(parts: readonly PartAbout[], about: Box): string {
  const near = parts.filter(({ box }) => box !== null && meets(box, about));
  return [...new Set(near.map(({ source }) => source.sha256))].sort().join(' ');
}

function meets(a: Box, b: Box): boolean {
  const apart = a.south > b.north || a.north < b.south;
  // either may run on beyond 180 across the antimeridian
  return !apart && [-360, 0, 360].some((turn) => a.west <= b.east + turn && a.east >= b.west + turn);
}
