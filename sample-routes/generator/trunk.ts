import { offset, type Pair, points, simplify, smooth } from './curve.ts';
import { curve, makeLine, roundabout, STRAIGHT } from './draw.ts';
import type { Tags } from './line.ts';
import type { Random } from './random.ts';
import type { Sheet } from './sheet.ts';

const TRUNK: Tags = {
  highway: 'trunk',
  ref: 'A9910',
  name: 'Wenlow Way',
  maxspeed: '70 mph',
  surface: 'asphalt',
};
const SLIP: Tags = {
  highway: 'trunk_link',
  oneway: 'yes',
  surface: 'asphalt',
  maxspeed: '50 mph',
  lanes: '1',
};

export const WEST_ROUND: Pair = [-5600, -900];
export const EAST_ROUND: Pair = [6500, 960];
const CENTRE: readonly Pair[] = [
  WEST_ROUND,
  [-5000, -560],
  [-4300, 60],
  [-3550, 830],
  [-2750, 1600],
  [-1700, 2080],
  [-300, 2230],
  [1200, 2120],
  [2700, 1800],
  [4200, 1480],
  [5600, 1180],
  EAST_ROUND,
];
/** Half the distance between the two carriageways. Metres. */
const HALF_M = 9;

/** The dual carriageway that passes the town to the north, its end roundabouts and the junction in the middle. */
export function layTrunk(sheet: Sheet, random: Random): void {
  const ring = {
    highway: 'trunk',
    ref: 'A9910',
    surface: 'asphalt',
    lit: 'yes',
    maxspeed: '40 mph',
    lanes: '2',
  };
  sheet.layRoundabout(roundabout('west-round', WEST_ROUND, 32, { ...ring, name: 'Pellam Cross' }));
  sheet.layRoundabout(roundabout('east-round', EAST_ROUND, 30, { ...ring, name: 'Quay Roundabout' }));
  const small = { ...ring, highway: 'secondary', ref: 'B9957', name: 'Larkenfold Junction', lanes: '1' };
  sheet.layRoundabout(roundabout('north-round', [425, 2340], 22, small));
  sheet.layRoundabout(roundabout('south-round', [415, 2020], 22, small));

  const centre = smooth(points(CENTRE));
  // driven on the left: eastbound lies north of the middle
  const east = simplify(offset(centre, HALF_M), 0.5);
  const west = simplify(offset(centre, -HALF_M), 0.5).reverse();
  const tags = { ...TRUNK, oneway: 'yes', lanes: '2' };
  sheet.lay(makeLine('trunk-east', 'road', east, tags, { separate: true }));
  sheet.lay(makeLine('trunk-west', 'road', west, tags, { separate: true }));

  const slip = (key: string, pairs: readonly Pair[], joins: string) =>
    sheet.lay(
      makeLine(key, 'road', curve(random, points(pairs), STRAIGHT), SLIP, { separate: true, joins: [joins] }),
    );
  slip(
    'slip-east-off',
    [
      [-150, 2246],
      [60, 2268],
      [250, 2310],
      [425, 2340],
    ],
    'trunk-east',
  );
  slip(
    'slip-east-on',
    [
      [425, 2340],
      [600, 2298],
      [800, 2228],
      [1010, 2160],
    ],
    'trunk-east',
  );
  slip(
    'slip-west-off',
    [
      [1000, 2135],
      [780, 2128],
      [600, 2070],
      [415, 2020],
    ],
    'trunk-west',
  );
  slip(
    'slip-west-on',
    [
      [415, 2020],
      [220, 2080],
      [20, 2170],
      [-190, 2220],
    ],
    'trunk-west',
  );
}
