import { ROUNDABOUTS, SLIPS, TRUNK } from '../plan/trunk.ts';
import { STRAIGHT } from '../plan/words.ts';
import { offset, points, simplify, smooth } from './lines/curve.ts';
import { drawLine, makeLine, roundabout } from './lines/make-line.ts';
import { item } from './lines/plane.ts';
import type { Random } from './lines/random.ts';
import type { Sheet } from './sheet.ts';

/** The dual carriageway that passes the town to the north, its end roundabouts and the junction in the middle. */
export function layTrunk(sheet: Sheet, random: Random): void {
  for (const { key, middle, radiusM, tags } of ROUNDABOUTS)
    sheet.layRoundabout(roundabout(key, item(points(middle), 0), radiusM, tags));
  const centre = smooth(points(TRUNK.through));
  // driven on the left: eastbound lies north of the middle
  const east = simplify(offset(centre, TRUNK.halfM), 0.5);
  const west = simplify(offset(centre, -TRUNK.halfM), 0.5).reverse();
  sheet.lay(makeLine('trunk-east', 'road', east, TRUNK.tags, { separate: true }));
  sheet.lay(makeLine('trunk-west', 'road', west, TRUNK.tags, { separate: true }));
  for (const slip of SLIPS) sheet.lay(drawLine(random, 'road', { ...slip, bend: STRAIGHT, separate: true }));
}
