import { type Settlement, TOWN, VILLAGES } from '../plan/settlements.ts';
import { distance, type Point } from './lines/plane.ts';

const ALL: readonly Settlement[] = [TOWN, ...VILLAGES];

export function settlementAt(p: Point): Settlement | undefined {
  return ALL.find((one) => distance(p, one) < one.radius);
}
