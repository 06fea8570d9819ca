import type { VehicleCard } from '../../geo/vehicle/card.ts';

/** Where a new card begins: a usual coach-built on a 3.5 t chassis, to be overwritten with what is measured. */
export const BLANK_CARD: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'New vehicle, not yet measured',
  heightM: 3,
  widthM: 2.3,
  widthMirrorsM: 2.8,
  lengthM: 6.99,
  wheelbaseM: 3.8,
  frontOverhangM: 0.95,
  rearOverhangM: 2.24,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2000 },
};
