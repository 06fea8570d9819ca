import { circle, lengthOf, offset, type Pair, simplify, smooth } from './curve.ts';
import { makeLine } from './draw.ts';
import { lineLength, type Tags } from './line.ts';
import { item, type Point, step } from './plane.ts';
import { between, type Random } from './random.ts';
import { TOWN, VILLAGES } from './settlements.ts';
import type { Site } from './streets.ts';

/** Middle, half length, half breadth, radians. */
type Blob = readonly [x: number, y: number, a: number, b: number, turn: number];

const WOODS: readonly (readonly [string, Blob])[] = [
  ['Quillet Hanger', [-5850, 4640, 420, 330, 0.3]],
  ['Coldharbour Wood', [-1560, 2650, 520, 230, 1.5]],
  ['Moss Wood', [-3900, 1650, 520, 170, 2.6]],
  ['Toft Plantation', [2350, 2600, 420, 260, 0.4]],
  ['Nether Copse', [-1650, -1950, 330, 170, 0.3]],
  ['Carr Wood', [-5500, 1400, 380, 240, 1.2]],
  ['Saltern Belt', [5750, -1600, 430, 120, 1.3]],
  ['Gannet Wood', [6600, 2950, 400, 260, 2.5]],
  ['Fold Wood', [2900, 3350, 300, 180, 2.3]],
  ['Link Spinney', [-4700, -2350, 300, 150, 0.4]],
];
const MEADOWS: readonly (readonly [Tags, Blob])[] = [
  [{ landuse: 'meadow' }, [-2100, 480, 420, 120, 2.5]],
  [{ landuse: 'meadow', flood_prone: 'yes' }, [3900, -1500, 480, 160, 2.5]],
  [{ natural: 'wetland', wetland: 'saltmarsh' }, [5500, -3750, 520, 200, 2.6]],
  [{ leisure: 'park', name: 'Castle Field' }, [-300, 470, 110, 80, 0.2]],
  [{ landuse: 'cemetery' }, [-620, -250, 55, 40, 0.1]],
  [{ leisure: 'golf_course', name: 'Sands Links' }, [-300, -4350, 420, 240, 0.1]],
  [{ natural: 'water', name: 'Barrow Tarn' }, [-3400, 3700, 230, 120, 0.5]],
  [{ natural: 'water', water: 'reservoir', name: 'Cawthern Water' }, [4500, 3600, 330, 170, 0.7]],
  [{ natural: 'heath' }, [-4200, 5000, 800, 380, 0.1]],
];

/** Woods, meadows, still water, the grounds of towns and villages, the beach. */
export function layGreenery(site: Site): void {
  const { sheet, random } = site;
  for (const { name, radius, x, y } of VILLAGES)
    sheet.areas.push({
      tags: { landuse: 'residential', name },
      ring: blob(random, [x, y, radius * 0.85, radius * 0.7, x % 3]),
    });
  sheet.areas.push({
    tags: { landuse: 'residential', name: TOWN.name },
    ring: blob(random, [150, 550, 1450, 1050, 0.4]),
  });
  sheet.areas.push({
    tags: { landuse: 'residential', name: TOWN.name },
    ring: blob(random, [-620, -950, 800, 560, 0.2]),
  });
  sheet.areas.push({
    tags: { landuse: 'industrial', name: 'Saltpan Trading Estate' },
    ring: blob(random, [1440, -60, 300, 260, 1.4]),
  });
  for (const [name, shape] of WOODS)
    sheet.areas.push({
      tags: { natural: 'wood', leaf_type: 'broadleaved', name },
      ring: blob(random, shape),
    });
  for (const [tags, shape] of MEADOWS) sheet.areas.push({ tags, ring: blob(random, shape) });
  sheet.areas.push({ tags: { natural: 'beach', surface: 'sand', name: 'Gannet Sands' }, ring: shoreStrip() });
}

function shoreStrip(): Point[] {
  const shore = (
    [
      [-350, -5080],
      [100, -5140],
      [520, -5190],
      [980, -5170],
      [1400, -5060],
    ] satisfies Pair[]
  ).map(([x, y]) => ({ x, y }));
  return [...shore, ...offset(shore, 110).reverse()];
}

/** An uneven oval. */
function blob(random: Random, [x, y, a, b, turn]: Blob): Point[] {
  const corners = circle({ x: 0, y: 0 }, 1, 9).map((p) => {
    const size = between(random, 0.78, 1.18);
    return step({ x, y }, turn, p.x * a * size, p.y * b * size);
  });
  return simplify(smooth([...corners, item(corners, 0)], 35), 4).slice(0, -1);
}

const ROWS: readonly (readonly [string, number, number])[] = [
  ['u-nether', 0.2, 0.55],
  ['u-mill', 0.35, 0.7],
  ['u-link', 0.3, 0.6],
  ['u-down', 0.55, 0.8],
  ['u-pond', 0.1, 0.3],
];

/** Rows of trees hard by some lanes. */
export function plantRows({ sheet }: Site): void {
  for (const [key, from, to] of ROWS) {
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
