import type { Tags, Through } from './words.ts';

export const WEST_ROUND: Through = '-5600 -900';
export const EAST_ROUND: Through = '6500 960';
const NORTH_ROUND: Through = '425 2340';
const SOUTH_ROUND: Through = '415 2020';

const RING: Tags = {
  highway: 'trunk',
  ref: 'A9910',
  surface: 'asphalt',
  lit: 'yes',
  maxspeed: '40 mph',
  lanes: '2',
};
const SMALL_RING: Tags = {
  ...RING,
  highway: 'secondary',
  ref: 'B9957',
  name: 'Larkenfold Junction',
  lanes: '1',
};

export const ROUNDABOUTS: readonly {
  readonly key: string;
  readonly middle: Through;
  readonly radiusM: number;
  readonly tags: Tags;
}[] = [
  { key: 'west-round', middle: WEST_ROUND, radiusM: 32, tags: { ...RING, name: 'Pellam Cross' } },
  { key: 'east-round', middle: EAST_ROUND, radiusM: 30, tags: { ...RING, name: 'Quay Roundabout' } },
  { key: 'north-round', middle: NORTH_ROUND, radiusM: 22, tags: SMALL_RING },
  { key: 'south-round', middle: SOUTH_ROUND, radiusM: 22, tags: SMALL_RING },
];

/** The middle between the two carriageways. */
export const TRUNK: { readonly tags: Tags; readonly through: Through; readonly halfM: number } = {
  tags: {
    highway: 'trunk',
    ref: 'A9910',
    name: 'Wenlow Way',
    maxspeed: '70 mph',
    surface: 'asphalt',
    oneway: 'yes',
    lanes: '2',
  },
  through: `${WEST_ROUND}, -5000 -560, -4300 60, -3550 830, -2750 1600, -1700 2080, -300 2230, 1200 2120, 2700 1800, 4200 1480, 5600 1180, ${EAST_ROUND}`,
  halfM: 9,
};

const SLIP: Tags = {
  highway: 'trunk_link',
  oneway: 'yes',
  surface: 'asphalt',
  maxspeed: '50 mph',
  lanes: '1',
};

export const SLIPS: readonly {
  readonly key: string;
  readonly through: Through;
  readonly joins: readonly string[];
  readonly tags: Tags;
}[] = [
  {
    key: 'slip-east-off',
    through: `-150 2246, 60 2268, 250 2310, ${NORTH_ROUND}`,
    joins: ['trunk-east'],
    tags: SLIP,
  },
  {
    key: 'slip-east-on',
    through: `${NORTH_ROUND}, 600 2298, 800 2228, 1010 2160`,
    joins: ['trunk-east'],
    tags: SLIP,
  },
  {
    key: 'slip-west-off',
    through: `1000 2135, 780 2128, 600 2070, ${SOUTH_ROUND}`,
    joins: ['trunk-west'],
    tags: SLIP,
  },
  {
    key: 'slip-west-on',
    through: `${SOUTH_ROUND}, 220 2080, 20 2170, -190 2220`,
    joins: ['trunk-west'],
    tags: SLIP,
  },
];
