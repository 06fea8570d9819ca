import { EAST_ROUND, WEST_ROUND } from './trunk.ts';
import { COUNTRY, LANE, MAIN, type RoadPlan, STRAIGHT, type Tags } from './words.ts';

const A: Tags = { highway: 'primary', surface: 'asphalt', maxspeed: '60 mph', lanes: '2', width: '7.3' };
const B: Tags = { highway: 'secondary', surface: 'asphalt', maxspeed: '60 mph', lanes: '2', width: '6.4' };
const C: Tags = { highway: 'tertiary', surface: 'asphalt', maxspeed: '60 mph', lanes: '2', width: '6' };
const U: Tags = { highway: 'unclassified', surface: 'asphalt', maxspeed: '60 mph' };

/** The numbered roads and the lanes between the villages, in the order in which they are laid. */
export const ROADS: readonly RoadPlan[] = [
  {
    key: 'a-west',
    bend: MAIN,
    tags: { ...A, ref: 'A9923', name: 'Pellam Road' },
    through: `${WEST_ROUND}, -4700 -560, -3600 -250, -2600 -40, -1700 60, -1000 -90`,
  },
  {
    key: 'high',
    bend: { amplitude: 5, wave: 300 },
    tags: { ...A, ref: 'A9923', name: 'High Street', maxspeed: '20 mph', lit: 'yes' },
    through: '-1000 -90, -600 -95, -300 -60, 60 10, 330 90',
  },
  {
    key: 'a-east',
    bend: MAIN,
    tags: { ...A, ref: 'A9923', name: 'Quay Road' },
    through: `330 90, 900 210, 1700 360, 2700 560, 3800 690, 5200 860, ${EAST_ROUND}`,
  },
  {
    key: 'a-port',
    bend: { amplitude: 6, wave: 500 },
    tags: { ...A, ref: 'A9910', name: 'Harbour Approach', maxspeed: '40 mph', lit: 'yes' },
    through: `${EAST_ROUND}, 6800 860, 7150 720, 7500 640`,
  },
  {
    key: 'b-valley',
    bend: COUNTRY,
    tags: { ...B, ref: 'B9931', name: 'Dale Road' },
    through:
      '-640 -90, -700 420, -1050 690, -1600 1080, -2300 1560, -3200 2180, -4100 2640, -4900 3220, -5450 3700, -5750 3980',
    under: true,
  },
  {
    key: 'b-north',
    bend: COUNTRY,
    tags: { ...B, ref: 'B9957', name: 'North Road' },
    through: '330 90, 430 500, 400 1100, 430 1650, 415 2020',
  },
  { key: 'b-join', bend: STRAIGHT, tags: { ...B, ref: 'B9957' }, through: '415 2020, 420 2180, 425 2340' },
  {
    key: 'b-lark',
    bend: COUNTRY,
    tags: { ...B, ref: 'B9957', name: 'Larkenfold Road' },
    through: '425 2340, 460 2800, 760 3350, 1150 3850, 1480 4200, 1300 4800, 700 5100',
  },
  {
    key: 'b-south',
    bend: COUNTRY,
    tags: { ...B, ref: 'B9942', name: 'Station Road' },
    through: '-430 -75, -450 -330, -430 -720, -330 -1500, 0 -2300, 180 -2850, 300 -3230',
    rail: [{ how: 'arch', tags: { maxheight: '9\'6"', 'maxheight:signed': 'yes' } }],
  },
  {
    key: 'b-beach',
    bend: COUNTRY,
    tags: { ...B, ref: 'B9942', name: 'Sands Road' },
    through: '300 -3230, 480 -3700, 560 -4250, 520 -4760',
  },
  {
    key: 'b-brack',
    bend: COUNTRY,
    tags: { ...B, ref: 'B9968', name: 'Brackwater Road' },
    through: '2700 560, 2760 0, 2900 -600, 3050 -1200, 3180 -2000, 3260 -2720',
    rail: [{ how: 'level', tags: { 'crossing:barrier': 'half', 'crossing:light': 'yes' } }],
  },
  {
    key: 'c-coast',
    bend: COUNTRY,
    tags: { ...C, name: 'Cliff Road' },
    through: `${WEST_ROUND}, -6050 -1250, -6520 -1650, -6400 -2400, -5700 -3000, -4400 -3350, -2900 -3650, -1500 -3350, -600 -3150, 300 -3230`,
    rail: [{ how: 'over' }],
  },
  {
    key: 'c-marsh',
    bend: COUNTRY,
    tags: { ...C, name: 'Marsh Road' },
    through: '300 -3230, 1200 -3150, 2200 -2900, 3260 -2720, 4200 -2750, 5100 -3250',
  },
  {
    key: 'c-fold',
    bend: COUNTRY,
    tags: { ...C, name: 'Fold Lane' },
    through: '1480 4200, 2500 3700, 3620 2930, 4400 2250, 5000 1700, 5350 880',
  },
  {
    key: 'c-head',
    bend: LANE,
    tags: { ...C, name: 'Quillet Bank' },
    through:
      '-5750 3980, -5980 4180, -5780 4330, -6060 4480, -5830 4640, -6080 4790, -5700 4990, -5000 5000, -3800 4700, -2600 4250, -1500 3700',
  },
  {
    key: 'c-upper',
    bend: COUNTRY,
    tags: { ...C, name: 'Ridge Road' },
    through: '-1500 3700, -600 3500, 200 3050, 520 2920',
  },
  {
    key: 'u-south-bank',
    bend: LANE,
    tags: { ...U, name: 'Mossgate Lane', lanes: '1', width: '3.2', passing_places: 'yes' },
    through:
      '-1500 60, -1900 480, -2550 950, -3200 1500, -3850 1780, -4500 2150, -5250 2700, -6000 3250, -6300 3700, -5750 3980',
  },
  {
    key: 'u-oxholt',
    bend: LANE,
    tags: { ...U, name: 'Mill Lane', lanes: '1', width: '3' },
    through: '-3700 2440, -3560 2150, -3420 1900, -3330 1600',
    bridge: { name: 'Oxholt Bridge', maxweight: '3' },
  },
  {
    key: 'u-quillet',
    bend: LANE,
    tags: { ...U, name: 'Quillet Lane', lanes: '1', width: '3', passing_places: 'yes' },
    through: '-3600 -250, -3450 -700, -3000 -1600, -2650 -2300, -2500 -2900, -2450 -3600',
    ford: { ford: 'yes', depth: '0.2' },
    rail: [{ how: 'level' }],
  },
  {
    key: 'u-upper',
    bend: LANE,
    tags: { ...U, name: 'Coldharbour Lane', lanes: '1', width: '3' },
    through: '-1600 1080, -1650 1700, -1500 2700, -1500 3700',
    under: true,
  },
  {
    key: 'u-wick',
    bend: LANE,
    tags: { ...U, name: 'Wick Lane', width: '4' },
    through: '3800 690, 4100 200, 4900 -700, 4700 -1400, 4200 -2000, 3900 -2750',
    bridge: { maxaxleload: '1.9' },
    rail: [{ how: 'arch', tags: { maxheight: '3.2' } }],
  },
  {
    key: 'u-mill',
    bend: LANE,
    tags: { ...U, name: 'Weir Lane', width: '4.2' },
    through: '-380 -1250, 250 -1350, 900 -1400, 1600 -1500, 2300 -1750, 3150 -1800',
  },
  {
    key: 'u-nether',
    bend: LANE,
    tags: { ...U, name: 'Nether Lane', width: '3.5', passing_places: 'yes' },
    through: '-2650 -2300, -1800 -1950, -1000 -1750, -300 -1600',
  },
  {
    key: 'u-link',
    bend: LANE,
    tags: { ...U, name: 'Tarn Lane', width: '3.5' },
    through: '-5700 -3000, -5100 -2500, -4300 -2150, -3400 -2250, -2650 -2300',
  },
  {
    key: 'u-down',
    bend: LANE,
    tags: { ...U, name: 'Down Lane', width: '3.5' },
    through: '760 3350, 1300 3200, 2050 3000, 2900 3050, 3620 2930',
    ford: { ford: 'yes', depth: '0.3' },
  },
  {
    key: 'u-barrow',
    bend: LANE,
    tags: { ...U, name: 'Barrow Lane', width: '3.5' },
    through: '-3000 2060, -2800 2700, -2750 3500, -2600 4250',
  },
  {
    key: 'u-carr',
    bend: LANE,
    tags: { ...U, name: 'Carr Lane', width: '3.5' },
    through: '-7500 700, -6500 400, -5700 900, -5200 1900, -5250 2700',
  },
  {
    key: 'u-west',
    bend: LANE,
    tags: { ...U, name: 'Seaward Lane', width: '4' },
    through: '-5600 -900, -6300 -500, -7200 0, -7500 700, -7400 1800, -6900 2800, -6000 3250',
  },
  {
    key: 'u-north',
    bend: LANE,
    tags: { ...U, name: 'Skerry Lane', width: '3.5' },
    through: '700 5100, -600 4900, -1700 4600, -2600 4250',
  },
  {
    key: 'u-east',
    bend: LANE,
    tags: { ...U, name: 'Gannet Lane', width: '3.5' },
    through: '6800 860, 7200 1600, 6900 2700, 5900 3400, 4600 3300, 3620 2930',
  },
  {
    key: 'u-halt',
    bend: LANE,
    tags: { ...U, name: 'Halt Lane', width: '3.5' },
    through: '-4150 -400, -4050 -950, -4250 -1500, -4300 -2150',
    rail: [{ how: 'arch' }],
  },
  {
    key: 'u-pond',
    bend: LANE,
    tags: { ...U, name: 'Saltern Lane', width: '3.5' },
    through: '5100 -3250, 5500 -2300, 5900 -1300, 5600 -600, 4850 -620',
  },
];
