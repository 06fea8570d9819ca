import { type Pair, points } from './curve.ts';
import { type Bend, curve, makeLine } from './draw.ts';
import { type Lay, layHarbour } from './harbour.ts';
import { lineLength, markSpan, placeOn, type Tags } from './line.ts';
import { item, type Point } from './plane.ts';
import type { Site } from './streets.ts';

const EASY: Bend = { amplitude: 3, wave: 120 };
const SERVICE: Tags = { highway: 'service', surface: 'asphalt' };

/** Single places that the drives call at: the hire yard, pitches, fuel, the beach, the harbour and its ferry. */
export function laySites(site: Site): void {
  const lay: Lay = (key, through, tags, options) =>
    site.sheet.lay({ ...makeLine(key, 'road', curve(site.random, points(through), EASY), tags), ...options });
  const area = (tags: Tags, ring: readonly Pair[]) => site.sheet.areas.push({ tags, ring: points(ring) });
  const spot = (x: number, y: number, tags: Tags) => site.sheet.spots.push({ x, y, tags });

  lay(
    'yard',
    [
      [1243, -128],
      [1190, -150],
      [1130, -140],
      [1090, -90],
      [1095, -40],
    ],
    { ...SERVICE, access: 'customers', name: 'Saltpan Yard' },
  );
  area({ landuse: 'commercial', name: 'Saltpan Yard' }, [
    [1215, -175],
    [1075, -170],
    [1060, -20],
    [1120, -10],
    [1150, -110],
    [1215, -110],
  ]);

  lay(
    'fuel',
    [
      [1960, 420],
      [2000, 470],
      [2090, 490],
      [2140, 440],
    ],
    { ...SERVICE, maxheight: '4.2', oneway: 'yes' },
  );
  spot(2045, 500, {
    amenity: 'fuel',
    name: 'Staithe Garage',
    'fuel:diesel': 'yes',
    'fuel:lpg': 'yes',
    opening_hours: 'Mo-Su 06:00-22:00',
  });

  layPitches(lay, area, spot);
  layBeach(lay, area, spot, site);
  layHarbour(lay, spot, site);
  layOddities(lay, site);
}

function layPitches(
  lay: Lay,
  area: (tags: Tags, ring: readonly Pair[]) => void,
  spot: (x: number, y: number, tags: Tags) => void,
): void {
  const paved = { ...SERVICE, lanes: '2', width: '6' };
  lay(
    'tarn',
    [
      [-4640, -545],
      [-4615, -640],
      [-4555, -735],
      [-4460, -790],
    ],
    { ...paved, name: 'Tarn Park' },
  );
  lay(
    'tarn-loop',
    [
      [-4560, -730],
      [-4650, -800],
      [-4720, -745],
      [-4618, -635],
    ],
    paved,
  );
  area({ tourism: 'caravan_site', name: 'Tarn Park', motorhome: 'yes', sanitary_dump_station: 'yes' }, [
    [-4760, -830],
    [-4430, -850],
    [-4420, -750],
    [-4560, -620],
    [-4740, -640],
  ]);
  spot(-4605, -655, { amenity: 'water_point', name: 'Tarn Park water' });
  spot(-4600, -668, {
    amenity: 'sanitary_dump_station',
    'sanitary_dump_station:chemical_toilet': 'yes',
    'sanitary_dump_station:grey_water': 'yes',
    access: 'customers',
  });

  lay(
    'beckside',
    [
      [-2905, -1790],
      [-2830, -1740],
      [-2740, -1770],
      [-2690, -1850],
    ],
    { ...SERVICE, surface: 'gravel', name: 'Beckside' },
  );
  lay(
    'beckside-field',
    [
      [-2740, -1770],
      [-2700, -1690],
      [-2620, -1670],
    ],
    { ...SERVICE, surface: 'grass', smoothness: 'bad' },
  );
  area({ tourism: 'camp_site', name: 'Beckside', surface: 'grass', motorhome: 'yes' }, [
    [-2860, -1700],
    [-2860, -1880],
    [-2660, -1900],
    [-2580, -1640],
    [-2720, -1630],
  ]);
  spot(-2835, -1725, { amenity: 'water_point' });
  spot(170, 1120, {
    amenity: 'sanitary_dump_station',
    name: 'Ring Road dump point',
    access: 'yes',
    opening_hours: 'Mo-Sa 07:00-19:00',
  });
}

function layBeach(
  lay: Lay,
  area: (tags: Tags, ring: readonly Pair[]) => void,
  spot: (x: number, y: number, tags: Tags) => void,
  site: Site,
): void {
  const line = lay(
    'beach',
    [
      [520, -4760],
      [530, -4840],
      [575, -4920],
      [680, -4975],
      [800, -4960],
    ],
    { ...SERVICE, surface: 'gravel' },
  );
  const bar = item(line.pts, Math.min(2, line.pts.length - 2));
  bar.tags = { barrier: 'height_restrictor', maxheight: '2.1' };
  lay(
    'beach-sand',
    [
      [680, -4975],
      [700, -5040],
      [800, -5060],
      [880, -5030],
    ],
    { ...SERVICE, service: 'parking_aisle', surface: 'sand' },
  );
  area(
    { amenity: 'parking', name: 'Gannet Sands car park', parking: 'surface', maxheight: '2.1', fee: 'yes' },
    [
      [560, -4890],
      [870, -4900],
      [920, -5010],
      [700, -5010],
      [600, -4960],
    ],
  );
  spot(470, -4720, { amenity: 'toilets' });
  site.sheet.areas.push({
    tags: { amenity: 'parking', name: 'Castle Street car park', parking: 'surface' },
    ring: points([
      [60, 300],
      [170, 285],
      [175, 330],
      [65, 350],
    ]),
  });
}

function layOddities(lay: Lay, site: Site): void {
  const drive = lay(
    'castle-park',
    [
      [-1330, 905],
      [-1180, 1010],
      [-960, 960],
      [-790, 690],
    ],
    { ...SERVICE, name: 'Castle Park', access: 'private', width: '4' },
  );
  item(drive.pts, Math.floor(drive.pts.length / 2)).tags = { barrier: 'lift_gate' };
  const passage = lay(
    'passage',
    [
      [-170, -200],
      [-225, -232],
      [-275, -240],
      [-330, -215],
    ],
    { ...SERVICE, name: 'Bell Yard', width: '3' },
  );
  markSpan(passage, 45, 57, { tunnel: 'building_passage', maxheight: '2.8' });
  const bell = points([
    [-215, -245],
    [-260, -260],
    [-258, -225],
    [-213, -212],
  ]);
  site.sheet.areas.push({ tags: { building: 'commercial', name: 'The Bell' }, ring: bell });
  for (const p of bell) site.ground.take(p, 4);
  const cliff = site.sheet.line('c-coast');
  const middle: Point = { x: -5050, y: -3200 };
  const { metres } = placeOn(cliff, middle);
  markSpan(cliff, metres - 95, metres + 95, {
    tunnel: 'yes',
    layer: '-1',
    maxheight: '14\'6"',
    name: 'Cliff Tunnel',
    lit: 'yes',
  });
  if (lineLength(cliff) < metres) throw new Error('the tunnel lies beyond the road');
  const foot = makeLine(
    'footbridge',
    'path',
    points([
      [-1165, 640],
      [-1120, 700],
      [-1070, 790],
    ]),
    { highway: 'footway', surface: 'concrete' },
    { separate: true },
  );
  site.sheet.lay(foot);
}
