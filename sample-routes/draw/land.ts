import { RIVER, SHORES, STREAMS } from '../plan/land.ts';
import type { Bend } from '../plan/words.ts';
import { offset, points, simplify, smooth, sway } from './lines/curve.ts';
import { drawLine, makeLine } from './lines/make-line.ts';
import { item } from './lines/plane.ts';
import type { Random } from './lines/random.ts';
import type { Sheet } from './sheet.ts';

const BROOK: Bend = { amplitude: 28, wave: 300 };

/** Shore, river, streams and lake. Drawn first: roads bridge what they find. */
export function layLand(sheet: Sheet, random: Random): void {
  for (const { key, bulge, ring } of SHORES) layShore(sheet, random, key, { bulge, ring });
  sheet.lay(drawLine(random, 'river', RIVER));
  layBanks(sheet);
  for (const { key, name, through } of STREAMS)
    sheet.lay(drawLine(random, 'stream', { key, bend: BROOK, tags: { waterway: 'stream', name }, through }));
}

function layShore(
  sheet: Sheet,
  random: Random,
  key: string,
  { bulge, ring }: { readonly bulge: number; readonly ring: string },
): void {
  const corners = points(ring);
  const rough = sway(smooth([...corners, item(corners, 0)], 40), random, bulge, 2300);
  const drawn = simplify(sway(rough, random, 28, 430), 3).slice(0, -1);
  const line = makeLine(key, 'coast', drawn, { natural: 'coastline' });
  line.pts.push(item(line.pts, 0));
  line.seg.push({});
  sheet.lay(line);
}

/** The river's surface from the upper dale down to the sea, widening. */
function layBanks(sheet: Sheet): void {
  const line = sheet.line('river').pts;
  const reach = 12;
  for (let from = 10; from < line.length - 1; from += reach) {
    const part = line.slice(from, Math.min(line.length, from + reach + 1)).map(({ x, y }) => ({ x, y }));
    if (part.length < 2) break;
    const half = 6 + (5 * from) / line.length;
    const ring = [...offset(part, half), ...offset(part, -half).reverse()];
    sheet.areas.push({ tags: { natural: 'water', water: 'river' }, ring });
  }
}
