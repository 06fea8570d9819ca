import { offset, type Pair, points, simplify, smooth, sway } from './curve.ts';
import { curve, draw, makeLine } from './draw.ts';
import { item } from './plane.ts';
import type { Random } from './random.ts';
import type { Sheet } from './sheet.ts';

/** The island's shore, anticlockwise so that land lies on the left. */
const SHORE: readonly Pair[] = [
  [8150, 900],
  [7900, 2300],
  [7000, 3600],
  [5200, 4500],
  [3300, 5300],
  [1200, 5700],
  [-900, 5500],
  [-3000, 5900],
  [-5200, 5850],
  [-7200, 5300],
  [-8400, 4000],
  [-8700, 2200],
  [-8300, 400],
  [-8600, -1200],
  [-8100, -2700],
  [-6800, -3700],
  [-5000, -4200],
  [-3200, -4700],
  [-1600, -4500],
  [-300, -5150],
  [900, -5250],
  [2300, -4700],
  [3900, -4950],
  [5600, -4500],
  [6350, -4080],
  [6050, -3640],
  [6420, -3480],
  [7000, -3500],
  [7700, -2300],
  [8000, -900],
];
const HOLM: readonly Pair[] = [
  [11500, 500],
  [11200, 1200],
  [10500, 1350],
  [9950, 900],
  [9800, 250],
  [10200, -450],
  [10900, -500],
  [11400, -100],
];
const RIVER: readonly Pair[] = [
  [-7000, 4650],
  [-6350, 4000],
  [-5850, 3420],
  [-5200, 2980],
  [-4300, 2330],
  [-3400, 1880],
  [-2560, 1260],
  [-1700, 690],
  [-950, 290],
  [-330, 110],
  [250, -110],
  [900, -470],
  [1650, -640],
  [2500, -1080],
  [3500, -1560],
  [4400, -2150],
  [5250, -2930],
  [6100, -3560],
  [6550, -3780],
];

/** Shore, river, streams and lake. Drawn first: roads bridge what they find. */
export function layLand(sheet: Sheet, random: Random): void {
  for (const [key, shore] of [
    ['shore', SHORE],
    ['holm-shore', HOLM],
  ] as const) {
    const ring = points(shore);
    const rough = sway(smooth([...ring, item(ring, 0)], 40), random, key === 'shore' ? 150 : 60, 2300);
    const drawn = simplify(sway(rough, random, 28, 430), 3).slice(0, -1);
    const line = makeLine(key, 'coast', drawn, { natural: 'coastline' });
    line.pts.push(item(line.pts, 0));
    line.seg.push({});
    sheet.lay(line);
  }
  const river = draw(
    random,
    'river',
    'river',
    RIVER,
    { amplitude: 42, wave: 640 },
    { waterway: 'river', name: 'River Wenlow', width: '18' },
  );
  sheet.lay(river);
  layBanks(sheet);
  const stream = (key: string, name: string, through: readonly Pair[]) =>
    sheet.lay(
      makeLine(key, 'stream', curve(random, points(through), { amplitude: 28, wave: 300 }), {
        waterway: 'stream',
        name,
      }),
    );
  stream('quill', 'Quill Beck', [
    [-3900, -2950],
    [-3300, -2200],
    [-3000, -1500],
    [-2700, -800],
    [-2250, -100],
    [-1800, 400],
    [-1650, 660],
  ]);
  stream('lark', 'Lark Brook', [
    [1900, 4900],
    [2050, 4100],
    [2150, 3200],
    [1950, 2300],
    [1750, 1500],
    [1650, 700],
    [1580, 100],
    [1620, -620],
  ]);
  stream('brack', 'Brack Water', [
    [1300, -2300],
    [2100, -2500],
    [2950, -2450],
    [3900, -2250],
    [4420, -2170],
  ]);
  stream('thrush', 'Thrush Gill', [
    [-4200, 5200],
    [-4700, 4500],
    [-5100, 3900],
    [-5300, 3400],
    [-5230, 3020],
  ]);
  stream('sand', 'Sand Beck', [
    [-1500, -2700],
    [-800, -3500],
    [-500, -4200],
    [-380, -5140],
  ]);
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
