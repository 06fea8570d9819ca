import { draw } from './draw.ts';
import { lineLength, markSpan, placeOn } from './line.ts';
import type { Random } from './random.ts';
import type { Sheet } from './sheet.ts';

const RAIL = { railway: 'rail', gauge: '1435', usage: 'branch', electrified: 'no' };

/** One line from the western coast by the market town to the harbour, on embankments where the valley is low. */
export function layRailway(sheet: Sheet, random: Random): void {
  const line = sheet.lay(
    draw(
      random,
      'rail',
      'rail',
      [
        [-7000, -2150],
        [-6200, -2130],
        [-5200, -1780],
        [-4200, -1180],
        [-3000, -620],
        [-1900, -420],
        [-900, -470],
        [-100, -600],
        [700, -880],
        [1500, -1010],
        [2350, -900],
        [3300, -560],
        [4500, -180],
        [5800, 90],
        [7050, 260],
      ],
      { amplitude: 8, wave: 1900 },
      { ...RAIL, name: 'Wenlow Valley Line' },
    ),
  );
  const length = lineLength(line);
  for (const [from, to] of [
    [0.17, 0.33],
    [0.4, 0.56],
    [0.62, 0.7],
    [0.8, 0.93],
  ] as const)
    markSpan(line, from * length, to * length, { embankment: 'yes' });
  for (const [name, x, y] of [
    ['Pellam', -6560, -2140],
    ['Wenlowbridge', -240, -575],
    ['Marrel Quay', 6960, 250],
  ] as const) {
    const { metres } = placeOn(line, { x, y });
    const stop = line.pts.reduce((best, p) =>
      Math.hypot(p.x - x, p.y - y) < Math.hypot(best.x - x, best.y - y) ? p : best,
    );
    stop.tags = { ...stop.tags, railway: 'station', name: `${name} Station` };
    if (metres < 0) throw new Error('off the line');
  }
}
