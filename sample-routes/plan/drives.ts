/** A place to pass, taken at the nearest node of a road; with a name, of a road of that name or number. */
export interface Stop {
  readonly x: number;
  readonly y: number;
  readonly on?: string;
}

/** One sample drive: the quickest way from stop to stop, written down in one of three ways. */
interface DrivePlan {
  readonly file: string;
  readonly name: string;
  readonly about: string;
  readonly stops: readonly Stop[];
  readonly drawn: DrawnAs;
}

export type DrawnAs =
  /** as a planner exports it: every bend */
  | { readonly how: 'dense'; readonly seed: number }
  /** as a route keeps it: a point about every so many metres */
  | { readonly how: 'sparse'; readonly everyM: number }
  /** as a receiver records it: wandering by about sigmaM; at a share of its fixes it loses so many */
  | {
      readonly how: 'recorded';
      readonly seed: number;
      readonly sigmaM: number;
      readonly lostAt: number;
      readonly lostFixes: number;
      /** Unix seconds */
      readonly startS: number;
    };

const YARD: Stop = { x: 1095, y: -40, on: 'Saltpan Yard' };
const HIGH_STREET: Stop = { x: -300, y: -60, on: 'High Street' };
const TARN_PARK: Stop = { x: -4460, y: -790, on: 'Tarn Park' };

export const DRIVES: readonly DrivePlan[] = [
  {
    file: 'clear.gpx',
    name: 'Saltpan Yard to Tarn Park',
    about: 'By the harbour road and the A9910: nothing stands in the way',
    stops: [YARD, { x: 5000, y: 1300, on: 'A9910' }, TARN_PARK],
    drawn: { how: 'dense', seed: 101 },
  },
  {
    file: 'barred.gpx',
    name: 'Saltpan Yard to Thrushcombe the short way',
    about: 'Past the posts in Tanner Row, under Station Arch and over Oxholt Bridge',
    stops: [
      YARD,
      { x: -60, y: 265, on: 'Castle Street' },
      { x: -120, y: 90, on: 'Tanner Row' },
      HIGH_STREET,
      { x: -440, y: -500, on: 'Station Road' },
      { x: -2650, y: -2300, on: 'Quillet Lane' },
      { x: -3200, y: 1500, on: 'Mossgate Lane' },
      { x: -3420, y: 1900, on: 'Mill Lane' },
      { x: -4100, y: 2640, on: 'Dale Road' },
      { x: -5750, y: 3980, on: 'Dale Road' },
    ],
    drawn: { how: 'dense', seed: 102 },
  },
  {
    file: 'everything.gpx',
    name: 'Round the district and over to Marrel Holm',
    about: 'One of each thing the map can say',
    stops: [
      YARD,
      { x: 1150, y: 1000, on: 'Ring Road East' },
      { x: 600, y: 1040, on: 'Ring Road East' },
      { x: -380, y: 1080, on: 'Ring Road West' },
      { x: -60, y: 265, on: 'Castle Street' },
      { x: -120, y: 90, on: 'Tanner Row' },
      { x: -180, y: -165, on: 'Market Place' },
      HIGH_STREET,
      { x: -440, y: -500, on: 'Station Road' },
      { x: -1800, y: -1950, on: 'Nether Lane' },
      { x: -2690, y: -1690, on: 'Beckside' },
      { x: -3400, y: -700, on: 'Quillet Lane' },
      { x: -4050, y: -950, on: 'Halt Lane' },
      { x: -5100, y: -2500, on: 'Tarn Lane' },
      { x: -5050, y: -3200, on: 'Cliff Tunnel' },
      { x: 480, y: -3700, on: 'Sands Road' },
      { x: 700, y: -5040 },
      { x: 480, y: -3700, on: 'Sands Road' },
      { x: 2200, y: -2900, on: 'Marsh Road' },
      { x: 4700, y: -1400, on: 'Wick Lane' },
      { x: 4100, y: 200, on: 'Wick Lane' },
      { x: 4400, y: 2250, on: 'Fold Lane' },
      { x: 2050, y: 3000, on: 'Down Lane' },
      { x: -600, y: 3500, on: 'Ridge Road' },
      { x: -1500, y: 2700, on: 'Coldharbour Lane' },
      { x: -720, y: 600, on: 'Dale Road' },
      { x: -1180, y: 1010, on: 'Castle Park' },
      { x: -2300, y: 1560, on: 'Dale Road' },
      { x: -3420, y: 1900, on: 'Mill Lane' },
      { x: -4500, y: 2150, on: 'Mossgate Lane' },
      { x: -6060, y: 4480, on: 'Quillet Bank' },
      { x: -2750, y: 3500, on: 'Barrow Lane' },
      { x: -2300, y: 1560, on: 'Dale Road' },
      { x: 425, y: 1650, on: 'North Road' },
      { x: 5000, y: 1330, on: 'A9910' },
      { x: 7620, y: 668, on: 'Check-in Lanes' },
      { x: 10500, y: -130, on: 'Loop Road' },
      { x: 10650, y: 590, on: 'Holm Road' },
    ],
    drawn: { how: 'dense', seed: 104 },
  },
  {
    file: 'recorded.gpx',
    name: 'Larkenfold to Tarn Park, recorded',
    about: 'A logger’s track with its wandering, and a break where it lost its fix',
    stops: [{ x: 1480, y: 4200, on: 'B9957' }, { x: 425, y: 1650, on: 'North Road' }, HIGH_STREET, TARN_PARK],
    // 13 June 2026, 08:40 UTC
    drawn: { how: 'recorded', seed: 103, sigmaM: 4, lostAt: 0.55, lostFixes: 25, startS: 1_781_340_000 },
  },
  {
    file: 'sparse.gpx',
    name: 'Saltpan Yard to Larkenfold by the marsh',
    about: 'A route of few points: what lies between them is guessed',
    stops: [
      YARD,
      { x: 3240, y: -2500, on: 'Brackwater Road' },
      { x: 2700, y: -2830, on: 'Marsh Road' },
      { x: 1200, y: -3150, on: 'Marsh Road' },
      { x: 0, y: -2300, on: 'Station Road' },
      { x: 430, y: 500, on: 'North Road' },
      { x: 1480, y: 4200, on: 'Fold Lane' },
    ],
    drawn: { how: 'sparse', everyM: 1000 },
  },
];
