import type { VehicleCard } from '../../../geo/vehicle/card.ts';

/** An invented coach-built motorhome, 7.4 m. */
export const COACH_BUILT: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'Heron 7.4',
  heightM: 3.05,
  widthM: 2.32,
  widthMirrorsM: 2.75,
  lengthM: 7.4,
  wheelbaseM: 4.04,
  frontOverhangM: 0.95,
  rearOverhangM: 2.41,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2240 },
};

export const PANEL_VAN: VehicleCard = {
  ...COACH_BUILT,
  name: 'Wren 6.0',
  heightM: 2.65,
  widthM: 2.05,
  widthMirrorsM: 2.51,
  lengthM: 6,
  wheelbaseM: 4.04,
  frontOverhangM: 0.95,
  rearOverhangM: 1.01,
};
