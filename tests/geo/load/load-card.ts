import fc from 'fast-check';
import { type Cures, cureOverload } from '../../../geo/load/cure/cure.ts';
import { loadAsItStands } from '../../../geo/load/doubts/load-with-doubts.ts';
import { sayCounted, sayDoubt } from '../../../geo/load/doubts/say-doubt.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import type { LoadResult } from '../../../geo/load/result.ts';
import type { Tank, VehicleCard } from '../../../geo/vehicle/card.ts';
import { COACHBUILT } from '../../support/ask.ts';

export const WATER: Tank = { name: 'Fresh tank', holds: 'fresh-water', xM: 2.5, capacityL: 120 };
export const WASTE: Tank = { name: 'Waste tank', holds: 'waste-water', xM: 5.4, capacityL: 90 };

/** Wheelbase 4 m, body to 6.05 m behind the front axle, rack to 6.65 m; 3000 kg empty and ready to drive with its driver. */
export const CARD: VehicleCard = {
  ...COACHBUILT,
  rack: { lengthM: 0.6, widthM: 2, fitted: true, limitKg: 60 },
  runningOrder: { frontKg: 1550, rearKg: 1450, includesDriver: true, includesFreshWater: false },
  tanks: [WATER, WASTE],
  lockers: [
    { name: 'Nose', xM: -0.4, limitKg: 30 },
    { name: 'Bench', xM: 1.7 },
    { name: 'Garage', xM: 5.2, limitKg: 150 },
  ],
};

/** The same on plates that a load far behind reaches late. */
export const HEAVY: VehicleCard = { ...CARD, grossKg: 4500, axleKg: { front: 2100, rear: 2800 } };

export const thing = (name: string, massKg: number, xM: number, more: Partial<LoadItem> = {}): LoadItem => ({
  name,
  massKg,
  xM,
  ...more,
});

/** With what is doubtful in words, as it stands. */
export function weighed(items: readonly LoadItem[], card: VehicleCard = CARD): LoadResult {
  const result = loadAsItStands(card, items);
  if (!result.ok) throw new Error(result.error.message);
  const { doubts, counted, ...figures } = result.value;
  return {
    ...figures,
    warnings: doubts.map((doubt) => sayDoubt(doubt, 'metric')),
    notes: counted.map(sayCounted),
  };
}

export function curesOf(items: readonly LoadItem[], card: VehicleCard = CARD): Cures {
  const cures = cureOverload(card, items);
  if (!cures.ok) throw new Error(cures.error.message);
  return cures.value;
}

/** Anything that may lie in or on a vehicle, or be taken off it. */
export const anyItem: fc.Arbitrary<LoadItem> = fc.record({
  name: fc.constantFrom('box', 'awning', 'chairs', 'tools', 'bikes'),
  massKg: fc.double({ min: -40, max: 120, noNaN: true }),
  xM: fc.double({ min: -0.9, max: 6.6, noNaN: true }),
});
