import { apartM } from '../../geo/earth/point.ts';
import { crossing } from '../../geo/earth/segment.ts';
import { type Line, markSpan, metresOf } from './lines/line.ts';
import { item } from './lines/plane.ts';
import type { Sheet } from './sheet.ts';

/** Measured on the trunk road under every bridge across it. */
const MEASURED = { 'maxheight:physical': '5.3' };
const HALF_M = 12;

/** Once every bridge stands: each carriageway of the trunk road beneath one carries its measured height. */
export function measureClearances(sheet: Sheet): void {
  const bridged = sheet.lines.filter((line) => line.seg.some((tags) => tags['bridge'] === 'yes'));
  for (const below of sheet.lines.filter((line) => line.separate === true))
    for (const metres of bridged.filter((line) => line !== below).flatMap((line) => crossedAt(below, line)))
      markSpan(below, metres - HALF_M, metres + HALF_M, MEASURED);
}

/** Metres along the lower line at each bridge of the upper one, where the lower is no bridge itself. */
function crossedAt(below: Line, above: Line): number[] {
  const found: number[] = [];
  for (let i = 1; i < below.pts.length; i++) {
    if (below.seg[i - 1]?.['bridge'] !== undefined) continue;
    const from = item(below.pts, i - 1);
    const to = item(below.pts, i);
    for (let j = 1; j < above.pts.length; j++) {
      if (above.seg[j - 1]?.['bridge'] !== 'yes') continue;
      const hit = crossing(from, to, item(above.pts, j - 1), item(above.pts, j));
      if (hit !== undefined) found.push(metresOf(below, from) + hit.t * apartM(from, to));
    }
  }
  return found;
}
