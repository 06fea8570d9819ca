import type { Point } from '../../geo/earth/point.ts';
import { BEACH, MEADOWS, type Oval, TOWN_GROUNDS, TREE_ROWS, WOODS } from '../plan/greenery.ts';
import { VILLAGES } from '../plan/settlements.ts';
import { circle, lengthOf, offset, points, simplify, smooth } from './lines/curve.ts';
import { lineLength } from './lines/line.ts';
import { makeLine } from './lines/make-line.ts';
import { item, step } from './lines/plane.ts';
import { between, type Random } from './lines/random.ts';
import type { Site } from './streets.ts';

/** Woods, meadows, still water, the grounds of towns and villages, the beach. */
export function layGreenery({ sheet, random }: Site): void {
  const grounds = VILLAGES.map(({ name, radius, x, y }) => ({
    tags: { landuse: 'residential', name },
    ...{ x, y, a: radius * 0.85, b: radius * 0.7, turn: x % 3 },
  }));
  for (const { tags, ...oval } of [...grounds, ...TOWN_GROUNDS, ...WOODS, ...MEADOWS])
    sheet.areas.push({ tags, ring: uneven(random, oval) });
  const shore = points(BEACH.shore);
  sheet.areas.push({ tags: BEACH.tags, ring: [...shore, ...offset(shore, BEACH.wideM).reverse()] });
}

function uneven(random: Random, { x, y, a, b, turn }: Oval): Point[] {
  const corners = circle({ x: 0, y: 0 }, 1, 9).map((p) => {
    const size = between(random, 0.78, 1.18);
    return step({ x, y }, turn, p.x * a * size, p.y * b * size);
  });
  return simplify(smooth([...corners, item(corners, 0)], 35), 4).slice(0, -1);
}

/** Rows of trees hard by some lanes. */
export function plantRows({ sheet }: Site): void {
  for (const { key, from, to } of TREE_ROWS) {
    const road = sheet.line(key);
    const length = lineLength(road);
    let gone = 0;
    const part = road.pts.filter((p, i) => {
      if (i > 0) gone += lengthOf([item(road.pts, i - 1), p]);
      return gone > from * length && gone < to * length;
    });
    if (part.length < 3) continue;
    for (const side of [4.5, -4.5])
      sheet.lines.push(makeLine(`row-${key}-${side}`, 'trees', offset(part, side), { natural: 'tree_row' }));
  }
}
