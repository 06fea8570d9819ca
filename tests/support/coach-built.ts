import type { VehicleCard } from '../../geo/vehicle/card.ts';

/** The coach-built of 7.4 m that all swing figures are checked with, without a rack. */
export const COACH_BUILT: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'Coach-built 7.4',
  heightM: 3,
  widthM: 2.32,
  widthMirrorsM: 2.8,
  lengthM: 7.405,
  wheelbaseM: 4.035,
  frontOverhangM: 0.95,
  rearOverhangM: 2.42,
  rearAxleRadiusMinM: 4.985,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2000 },
};
