import { type Pair, points } from './curve.ts';
import { type Bend, curve, makeLine, STRAIGHT } from './draw.ts';
import { type Line, type Tags, vertexAt } from './line.ts';
import type { Names } from './names.ts';
import { between } from './random.ts';
import { type Branch, branches, grid, type Site, street } from './streets.ts';

const STREET: Tags = { highway: 'residential', surface: 'asphalt', maxspeed: '20 mph', lit: 'yes' };
const GENTLE: Bend = { amplitude: 7, wave: 300 };

/** The market town on both banks: old streets, a grid by the station, later estates, a trading estate. */
export function layTown(site: Site, names: Names): void {
  const named = (kind: 'town' | 'estate', more: Tags = {}): Tags => ({
    ...STREET,
    name: names.next(kind),
    ...more,
  });
  const lay = (key: string, through: readonly Pair[], tags: Tags, bend = GENTLE) =>
    street(site, key, points(through), bend, tags);
  const collector: Tags = { ...STREET, highway: 'tertiary', lanes: '2', maxspeed: '30 mph', width: '6.2' };

  // the old town: Market Place and the lanes about it
  lay(
    'market',
    [
      [-300, -60],
      [-270, -140],
      [-180, -165],
      [-60, -95],
      [-30, -10],
    ],
    { ...STREET, highway: 'unclassified', name: 'Market Place' },
  );
  lay(
    'churchgate',
    [
      [-180, -165],
      [-150, -280],
      [-190, -430],
    ],
    { ...STREET, name: 'Churchgate' },
  );
  lay(
    'bridge-foot',
    [
      [60, 10],
      [130, -20],
      [330, -170],
      [560, -230],
    ],
    { ...STREET, name: 'Bridge Foot' },
  );
  lay(
    'park-lane',
    [
      [-700, 420],
      [-380, 330],
      [-60, 260],
      [200, 200],
      [370, 230],
    ],
    { ...collector, name: 'Castle Street' },
  );
  layTannerRow(site);

  // by the station: straight terraces
  grid(
    site,
    'terrace',
    [-980, -160],
    -0.06,
    [20, 140, 250, 360, 470],
    [-15, -85, -155, -225],
    [0, 110, 70, 25],
    () => named('town'),
  );
  grid(
    site,
    'south',
    [-860, -640],
    -0.12,
    [0, 120, 230, 340],
    [-10, -90, -170, -250, -330],
    [90, 110, 10, 60],
    () => named('town'),
  );

  // north of the river
  lay(
    'north-link',
    [
      [388, 1000],
      [760, 1060],
      [1150, 1000],
      [1420, 760],
      [1480, 340],
    ],
    { ...collector, name: 'Ring Road East' },
  );
  lay(
    'west-link',
    [
      [400, 1080],
      [40, 1150],
      [-380, 1080],
      [-700, 820],
      [-860, 560],
    ],
    { ...collector, name: 'Ring Road West' },
  );
  grid(
    site,
    'north',
    [520, 300],
    0.12,
    [10, 140, 270, 400, 530, 660, 790],
    [10, 100, 190, 280, 370, 460, 550],
    [100, 140, 60, 90],
    () => named('town'),
  );
  estate(
    'west',
    [
      [-695, 430],
      [-560, 640],
      [-380, 760],
      [-200, 700],
      [-80, 520],
      [-100, 285],
    ],
    names.next('estate'),
  );
  estate(
    'mid',
    [
      [410, 800],
      [250, 880],
      [60, 820],
      [20, 600],
      [150, 450],
      [400, 470],
    ],
    names.next('estate'),
  );
  estate(
    'upper',
    [
      [40, 1150],
      [-40, 1400],
      [-300, 1620],
      [-640, 1600],
      [-900, 1380],
      [-820, 1080],
      [-690, 810],
    ],
    names.next('estate'),
  );
  estate(
    'crown',
    [
      [430, 1400],
      [700, 1500],
      [1000, 1460],
      [1250, 1220],
      [1150, 1000],
    ],
    names.next('estate'),
  );
  estate(
    'far',
    [
      [700, 1500],
      [820, 1750],
      [1120, 1800],
      [1420, 1600],
      [1480, 1260],
      [1250, 1220],
    ],
    names.next('estate'),
  );
  // south of the railway
  estate(
    'weir',
    [
      [-400, -900],
      [-120, -960],
      [120, -1080],
      [260, -1340],
    ],
    names.next('estate'),
  );
  estate(
    'moor',
    [
      [-390, -1010],
      [-700, -1080],
      [-1000, -1000],
      [-1180, -800],
      [-1100, -560],
    ],
    names.next('estate'),
  );
  estate(
    'lea',
    [
      [-1180, -800],
      [-1450, -900],
      [-1500, -1250],
      [-1150, -1500],
      [-800, -1680],
    ],
    names.next('estate'),
  );
  estate(
    'pell',
    [
      [-1300, -20],
      [-1380, -180],
      [-1250, -320],
      [-1030, -330],
      [-980, -100],
    ],
    names.next('estate'),
  );
  layTrading(lay);

  function estate(key: string, spine: readonly Pair[], name: string): void {
    const line = lay(
      `estate-${key}`,
      spine,
      { ...STREET, name, traffic_calming: 'no' },
      { amplitude: 10, wave: 260 },
    );
    if (line === undefined) return;
    const closes = branches(site, `close-${key}`, line, [72, 110], () =>
      close(between(site.random, 110, 260), 34),
    );
    for (const [i, one] of closes.entries())
      branches(site, `close-${key}-${i}`, one, [62, 90], () => close(between(site.random, 50, 110), 27));
  }

  function close(lengthM: number, roomM: number): Branch {
    return { lengthM, roomM, tags: () => named('estate'), endTags: { highway: 'turning_circle' } };
  }
}

/** The old bridge street: posts let carts of seven feet through and nothing wider. */
function layTannerRow(site: Site): void {
  const through = points([
    [-60, 265],
    [-75, 180],
    [-120, 90],
    [-170, -30],
  ]);
  const tags = { ...STREET, name: 'Tanner Row', width: '4.5' };
  const row = site.sheet.lay(makeLine('tanner', 'road', curve(site.random, through, STRAIGHT), tags));
  const posts = vertexAt(row, 45);
  posts.tags = { barrier: 'bollard', 'maxwidth:physical': '2.1', motor_vehicle: 'yes' };
}

function layTrading(lay: (key: string, through: readonly Pair[], tags: Tags) => Line | undefined): void {
  const tags: Tags = {
    highway: 'unclassified',
    surface: 'asphalt',
    maxspeed: '30 mph',
    lit: 'yes',
    lanes: '2',
    width: '6.5',
  };
  lay(
    'trade',
    [
      [1250, 290],
      [1290, 100],
      [1240, -120],
      [1340, -300],
    ],
    { ...tags, name: 'Saltpan Road' },
  );
  lay(
    'trade-2',
    [
      [1290, 60],
      [1480, 20],
      [1560, -150],
      [1480, -330],
      [1330, -310],
    ],
    { ...tags, name: 'Foundry Road' },
  );
  lay(
    'trade-3',
    [
      [1840, 390],
      [1880, 150],
      [2050, -80],
      [2300, -150],
      [2420, 60],
      [2380, 480],
    ],
    { ...tags, name: 'Staithe Road' },
  );
}
