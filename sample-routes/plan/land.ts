import type { RoadPlan, Through } from './words.ts';

/** Shores, anticlockwise so that land lies on the left; how far they bulge in and out. Metres. */
export const SHORES: readonly { readonly key: string; readonly bulge: number; readonly ring: Through }[] = [
  {
    key: 'shore',
    bulge: 150,
    ring: '8150 900, 7900 2300, 7000 3600, 5200 4500, 3300 5300, 1200 5700, -900 5500, -3000 5900, -5200 5850, -7200 5300, -8400 4000, -8700 2200, -8300 400, -8600 -1200, -8100 -2700, -6800 -3700, -5000 -4200, -3200 -4700, -1600 -4500, -300 -5150, 900 -5250, 2300 -4700, 3900 -4950, 5600 -4500, 6350 -4080, 6050 -3640, 6420 -3480, 7000 -3500, 7700 -2300, 8000 -900',
  },
  {
    key: 'holm-shore',
    bulge: 60,
    ring: '11500 500, 11200 1200, 10500 1350, 9950 900, 9800 250, 10200 -450, 10900 -500, 11400 -100',
  },
];

export const RIVER: RoadPlan = {
  key: 'river',
  bend: { amplitude: 42, wave: 640 },
  tags: { waterway: 'river', name: 'River Wenlow', width: '18' },
  through:
    '-7000 4650, -6350 4000, -5850 3420, -5200 2980, -4300 2330, -3400 1880, -2560 1260, -1700 690, -950 290, -330 110, 250 -110, 900 -470, 1650 -640, 2500 -1080, 3500 -1560, 4400 -2150, 5250 -2930, 6100 -3560, 6550 -3780',
};

export const STREAMS: readonly { readonly key: string; readonly name: string; readonly through: Through }[] =
  [
    {
      key: 'quill',
      name: 'Quill Beck',
      through: '-3900 -2950, -3300 -2200, -3000 -1500, -2700 -800, -2250 -100, -1800 400, -1650 660',
    },
    {
      key: 'lark',
      name: 'Lark Brook',
      through: '1900 4900, 2050 4100, 2150 3200, 1950 2300, 1750 1500, 1650 700, 1580 100, 1620 -620',
    },
    {
      key: 'brack',
      name: 'Brack Water',
      through: '1300 -2300, 2100 -2500, 2950 -2450, 3900 -2250, 4420 -2170',
    },
    {
      key: 'thrush',
      name: 'Thrush Gill',
      through: '-4200 5200, -4700 4500, -5100 3900, -5300 3400, -5230 3020',
    },
    { key: 'sand', name: 'Sand Beck', through: '-1500 -2700, -800 -3500, -500 -4200, -380 -5140' },
  ];
