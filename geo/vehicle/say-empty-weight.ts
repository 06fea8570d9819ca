import type { VehicleCard } from './card.ts';

/** What the empty weight holds already, so that nothing is listed twice. */
export function sayEmptyWeight({
  includesDriver,
  includesFreshWater,
}: NonNullable<VehicleCard['runningOrder']>): string {
  const driver = includesDriver ? 'with driver' : 'without driver';
  const water = includesFreshWater ? 'with fresh water' : 'no fresh water';
  return `${driver}, ${water}, 90 % fuel`;
}
