/** A built-up place: its people's name, its middle, and how far its houses and its speed limit reach. */
export interface Settlement {
  readonly x: number;
  readonly y: number;
  readonly name: string;
  readonly place: 'town' | 'village' | 'hamlet';
  readonly radius: number;
  /** through roads along which it grew */
  readonly roads: readonly string[];
}

export const TOWN: Settlement = {
  name: 'Wenlowbridge',
  place: 'town',
  x: -60,
  y: 30,
  radius: 1500,
  roads: [],
};

export const VILLAGES: readonly Settlement[] = [
  {
    name: 'Thrushcombe',
    place: 'village',
    x: -5690,
    y: 3940,
    radius: 420,
    roads: ['b-valley', 'c-head', 'u-south-bank'],
  },
  { name: 'Oxholt', place: 'village', x: -3740, y: 2460, radius: 380, roads: ['b-valley', 'u-oxholt'] },
  { name: 'Larkenfold', place: 'village', x: 1440, y: 4180, radius: 430, roads: ['b-lark', 'c-fold'] },
  {
    name: 'Saltgarth',
    place: 'village',
    x: 300,
    y: -3230,
    radius: 460,
    roads: ['b-south', 'b-beach', 'c-coast', 'c-marsh'],
  },
  { name: 'Brackwater', place: 'village', x: 3260, y: -2720, radius: 400, roads: ['b-brack', 'c-marsh'] },
  { name: 'Pellam', place: 'village', x: -6500, y: -1750, radius: 520, roads: ['c-coast'] },
  { name: 'Marrel Quay', place: 'village', x: 7150, y: 760, radius: 520, roads: ['a-port', 'u-east'] },
  {
    name: 'Nether Quillet',
    place: 'village',
    x: -2640,
    y: -2310,
    radius: 330,
    roads: ['u-quillet', 'u-nether', 'u-link'],
  },
  {
    name: 'Upper Quillet',
    place: 'village',
    x: -1500,
    y: 3690,
    radius: 340,
    roads: ['c-head', 'c-upper', 'u-upper'],
  },
  {
    name: 'Cawthern',
    place: 'village',
    x: 3620,
    y: 2930,
    radius: 360,
    roads: ['c-fold', 'u-down', 'u-east'],
  },
  { name: 'Fenny Wick', place: 'hamlet', x: 4870, y: -660, radius: 260, roads: ['u-wick', 'u-pond'] },
  { name: 'Carr End', place: 'hamlet', x: -5250, y: 2650, radius: 220, roads: ['u-carr', 'u-south-bank'] },
  {
    name: 'Barrow Top',
    place: 'hamlet',
    x: -2620,
    y: 4240,
    radius: 240,
    roads: ['c-head', 'u-barrow', 'u-north'],
  },
  { name: 'Seaward', place: 'hamlet', x: -7480, y: 720, radius: 240, roads: ['u-west', 'u-carr'] },
  { name: 'Gannet Sands', place: 'hamlet', x: 545, y: -4480, radius: 300, roads: ['b-beach'] },
];
