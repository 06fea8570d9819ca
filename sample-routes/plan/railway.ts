import type { RoadPlan } from './words.ts';

export const RAILWAY: RoadPlan = {
  key: 'rail',
  bend: { amplitude: 8, wave: 1900 },
  tags: { railway: 'rail', gauge: '1435', usage: 'branch', electrified: 'no', name: 'Wenlow Valley Line' },
  through:
    '-7000 -2150, -6200 -2130, -5200 -1780, -4200 -1180, -3000 -620, -1900 -420, -900 -470, -100 -600, 700 -880, 1500 -1010, 2350 -900, 3300 -560, 4500 -180, 5800 90, 7050 260',
};

/** On embankments where the valley is low: from and to as shares of the line. */
export const EMBANKMENTS: readonly { readonly from: number; readonly to: number }[] = [
  { from: 0.17, to: 0.33 },
  { from: 0.4, to: 0.56 },
  { from: 0.62, to: 0.7 },
  { from: 0.8, to: 0.93 },
];

/** Each at the line's vertex nearest to x, y. */
export const STATIONS: readonly { readonly name: string; readonly x: number; readonly y: number }[] = [
  { name: 'Pellam Station', x: -6560, y: -2140 },
  { name: 'Wenlowbridge Station', x: -240, y: -575 },
  { name: 'Marrel Quay Station', x: 6960, y: 250 },
];
