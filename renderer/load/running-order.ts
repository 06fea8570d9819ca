import type { VehicleCard } from '../../geo/vehicle/card.ts';

/** What the running order holds already, so that nothing is listed twice. */
export function sayRunningOrder({
  includesDriver,
  includesFreshWater,
}: NonNullable<VehicleCard['runningOrder']>): string {
  const driver = includesDriver ? 'with driver' : 'without driver';
  const water = includesFreshWater ? 'with fresh water' : 'no fresh water';
  return `${driver}, ${water}, 90 % fuel`;
}
