import { readFileSync } from 'node:fs';
import { type LoadItem, loadListSchema } from '../../../geo/load/list/load-list.ts';
import { type VehicleCard, vehicleCardSchema } from '../../../geo/vehicle/card.ts';

const read = (path: string): unknown => JSON.parse(readFileSync(`sample-routes/${path}`, 'utf8'));

/** The coach-built of 7.4 m with its rack: 3500 kg, axles 1850 and 2000, empty weight 1590 and 1490. */
export const COACH_BUILT: VehicleCard = vehicleCardSchema.parse(read('vehicles/coach-built-7.4.json'));

/** A family of four in it: 26 kg too much. */
export const FAMILY: readonly LoadItem[] = loadListSchema.parse(read('loads/family-of-four.json')).items;
