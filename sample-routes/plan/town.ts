import type { Tags, Through } from './words.ts';

/** A quarter of the town, drawn in the order in which it grew. */
export type TownPlan =
  | { readonly kind: 'street'; readonly key: string; readonly through: Through; readonly tags: Tags }
  /** posts stand so many metres along it, and nothing stops it */
  | {
      readonly kind: 'posts';
      readonly key: string;
      readonly through: Through;
      readonly tags: Tags;
      readonly atM: number;
      readonly posts: Tags;
    }
  | GridPlan
  /** a winding street with closes on both sides */
  | { readonly kind: 'estate'; readonly key: string; readonly through: Through };

/** Straight terraces in two directions across a quarter, a little out of true. Metres, radians. */
export interface GridPlan {
  readonly kind: 'grid';
  readonly key: string;
  readonly origin: Through;
  readonly angle: number;
  readonly along: readonly number[];
  readonly across: readonly number[];
  /** how far the streets run on beyond the first and last of the others, to meet the roads about the quarter */
  readonly over: {
    readonly alongStart: number;
    readonly alongEnd: number;
    readonly acrossStart: number;
    readonly acrossEnd: number;
  };
}

export const STREET: Tags = { highway: 'residential', surface: 'asphalt', maxspeed: '20 mph', lit: 'yes' };
const COLLECTOR: Tags = { ...STREET, highway: 'tertiary', lanes: '2', maxspeed: '30 mph', width: '6.2' };
const TRADING: Tags = {
  highway: 'unclassified',
  surface: 'asphalt',
  maxspeed: '30 mph',
  lit: 'yes',
  lanes: '2',
  width: '6.5',
};

/** The market town on both banks: old streets, a grid by the station, later estates, a trading estate. */
export const TOWN_QUARTERS: readonly TownPlan[] = [
  // the old town: Market Place and the lanes about it
  {
    kind: 'street',
    key: 'market',
    through: '-300 -60, -270 -140, -180 -165, -60 -95, -30 -10',
    tags: { ...STREET, highway: 'unclassified', name: 'Market Place' },
  },
  {
    kind: 'street',
    key: 'churchgate',
    through: '-180 -165, -150 -280, -190 -430',
    tags: { ...STREET, name: 'Churchgate' },
  },
  {
    kind: 'street',
    key: 'bridge-foot',
    through: '60 10, 130 -20, 330 -170, 560 -230',
    tags: { ...STREET, name: 'Bridge Foot' },
  },
  {
    kind: 'street',
    key: 'park-lane',
    through: '-700 420, -380 330, -60 260, 200 200, 370 230',
    tags: { ...COLLECTOR, name: 'Castle Street' },
  },
  // the old bridge street: posts let carts of seven feet through and nothing wider
  {
    kind: 'posts',
    key: 'tanner',
    through: '-60 265, -75 180, -120 90, -170 -30',
    tags: { ...STREET, name: 'Tanner Row', width: '4.5' },
    atM: 45,
    posts: { barrier: 'bollard', 'maxwidth:physical': '2.1', motor_vehicle: 'yes' },
  },
  // by the station: straight terraces
  {
    kind: 'grid',
    key: 'terrace',
    origin: '-980 -160',
    angle: -0.06,
    along: [20, 140, 250, 360, 470],
    across: [-15, -85, -155, -225],
    over: { alongStart: 0, alongEnd: 110, acrossStart: 70, acrossEnd: 25 },
  },
  {
    kind: 'grid',
    key: 'south',
    origin: '-860 -640',
    angle: -0.12,
    along: [0, 120, 230, 340],
    across: [-10, -90, -170, -250, -330],
    over: { alongStart: 90, alongEnd: 110, acrossStart: 10, acrossEnd: 60 },
  },
  // north of the river
  {
    kind: 'street',
    key: 'north-link',
    through: '388 1000, 760 1060, 1150 1000, 1420 760, 1480 340',
    tags: { ...COLLECTOR, name: 'Ring Road East' },
  },
  {
    kind: 'street',
    key: 'west-link',
    through: '400 1080, 40 1150, -380 1080, -700 820, -860 560',
    tags: { ...COLLECTOR, name: 'Ring Road West' },
  },
  {
    kind: 'grid',
    key: 'north',
    origin: '520 300',
    angle: 0.12,
    along: [10, 140, 270, 400, 530, 660, 790],
    across: [10, 100, 190, 280, 370, 460, 550],
    over: { alongStart: 100, alongEnd: 140, acrossStart: 60, acrossEnd: 90 },
  },
  { kind: 'estate', key: 'west', through: '-695 430, -560 640, -380 760, -200 700, -80 520, -100 285' },
  { kind: 'estate', key: 'mid', through: '410 800, 250 880, 60 820, 20 600, 150 450, 400 470' },
  {
    kind: 'estate',
    key: 'upper',
    through: '40 1150, -40 1400, -300 1620, -640 1600, -900 1380, -820 1080, -690 810',
  },
  { kind: 'estate', key: 'crown', through: '430 1400, 700 1500, 1000 1460, 1250 1220, 1150 1000' },
  { kind: 'estate', key: 'far', through: '700 1500, 820 1750, 1120 1800, 1420 1600, 1480 1260, 1250 1220' },
  // south of the railway
  { kind: 'estate', key: 'weir', through: '-400 -900, -120 -960, 120 -1080, 260 -1340' },
  { kind: 'estate', key: 'moor', through: '-390 -1010, -700 -1080, -1000 -1000, -1180 -800, -1100 -560' },
  { kind: 'estate', key: 'lea', through: '-1180 -800, -1450 -900, -1500 -1250, -1150 -1500, -800 -1680' },
  { kind: 'estate', key: 'pell', through: '-1300 -20, -1380 -180, -1250 -320, -1030 -330, -980 -100' },
  {
    kind: 'street',
    key: 'trade',
    through: '1250 290, 1290 100, 1240 -120, 1340 -300',
    tags: { ...TRADING, name: 'Saltpan Road' },
  },
  {
    kind: 'street',
    key: 'trade-2',
    through: '1290 60, 1480 20, 1560 -150, 1480 -330, 1330 -310',
    tags: { ...TRADING, name: 'Foundry Road' },
  },
  {
    kind: 'street',
    key: 'trade-3',
    through: '1840 390, 1880 150, 2050 -80, 2300 -150, 2420 60, 2380 480',
    tags: { ...TRADING, name: 'Staithe Road' },
  },
];
