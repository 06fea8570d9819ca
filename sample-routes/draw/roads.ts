import { ROADS } from '../plan/roads.ts';
import { drawLine } from './lines/make-line.ts';
import type { Random } from './lines/random.ts';
import type { Sheet } from './sheet.ts';

/** Lays the numbered roads and the lanes between the villages. */
export function layRoads(sheet: Sheet, random: Random): void {
  for (const road of ROADS) sheet.lay(drawLine(random, 'road', road));
}
