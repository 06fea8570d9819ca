import { apartM, type Point } from '../../geo/earth/point.ts';
import { type Settlement, TOWN, VILLAGES } from '../plan/settlements.ts';

const ALL: readonly Settlement[] = [TOWN, ...VILLAGES];

export function settlementAt(p: Point): Settlement | undefined {
  return ALL.find((one) => apartM(p, one) < one.radius);
}
