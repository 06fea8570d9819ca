import { HARBOUR_SPOTS } from './harbour.ts';
import type { AreaPlan, SitePlan, SpotPlan, Tags } from './words.ts';

const SERVICE: Tags = { highway: 'service', surface: 'asphalt' };
const PAVED: Tags = { ...SERVICE, lanes: '2', width: '6' };

/** Roads of single places that the drives call at: the hire yard, pitches, fuel, the beach, the harbour. */
export const SITE_ROADS: readonly SitePlan[] = [
  {
    key: 'yard',
    through: '1243 -128, 1190 -150, 1130 -140, 1090 -90, 1095 -40',
    tags: { ...SERVICE, access: 'customers', name: 'Saltpan Yard' },
  },
  {
    key: 'fuel',
    through: '1960 420, 2000 470, 2090 490, 2140 440',
    tags: { ...SERVICE, maxheight: '4.2', oneway: 'yes' },
  },
  {
    key: 'tarn',
    through: '-4640 -545, -4615 -640, -4555 -735, -4460 -790',
    tags: { ...PAVED, name: 'Tarn Park' },
  },
  { key: 'tarn-loop', through: '-4560 -730, -4650 -800, -4720 -745, -4618 -635', tags: PAVED },
  {
    key: 'beckside',
    through: '-2905 -1790, -2830 -1740, -2740 -1770, -2690 -1850',
    tags: { ...SERVICE, surface: 'gravel', name: 'Beckside' },
  },
  {
    key: 'beckside-field',
    through: '-2740 -1770, -2700 -1690, -2620 -1670',
    tags: { ...SERVICE, surface: 'grass', smoothness: 'bad' },
  },
  {
    key: 'beach',
    through: '520 -4760, 530 -4840, 575 -4920, 680 -4975, 800 -4960',
    tags: { ...SERVICE, surface: 'gravel' },
    stands: { vertex: 2, tags: { barrier: 'height_restrictor', maxheight: '2.1' } },
  },
  {
    key: 'beach-sand',
    through: '680 -4975, 700 -5040, 800 -5060, 880 -5030',
    tags: { ...SERVICE, service: 'parking_aisle', surface: 'sand' },
  },
];

/** Roads in the town that are closed, or lead through a house. */
export const BY_ROADS: readonly SitePlan[] = [
  {
    key: 'castle-park',
    through: '-1330 905, -1180 1010, -960 960, -790 690',
    tags: { ...SERVICE, name: 'Castle Park', access: 'private', width: '4' },
    stands: { vertex: 'middle', tags: { barrier: 'lift_gate' } },
  },
  {
    key: 'passage',
    through: '-170 -200, -225 -232, -275 -240, -330 -215',
    tags: { ...SERVICE, name: 'Bell Yard', width: '3' },
    span: { fromM: 45, toM: 57, tags: { tunnel: 'building_passage', maxheight: '2.8' } },
  },
];

/** A tunnel about the place on the road nearest to x, y. */
export const CLIFF_TUNNEL = {
  on: 'c-coast',
  x: -5050,
  y: -3200,
  halfM: 95,
  tags: { tunnel: 'yes', layer: '-1', maxheight: '14\'6"', name: 'Cliff Tunnel', lit: 'yes' },
};

export const FOOTBRIDGE = {
  key: 'footbridge',
  through: '-1165 640, -1120 700, -1070 790',
  tags: { highway: 'footway', surface: 'concrete' },
};

export const SITE_AREAS: readonly AreaPlan[] = [
  {
    tags: { landuse: 'commercial', name: 'Saltpan Yard' },
    ring: '1215 -175, 1075 -170, 1060 -20, 1120 -10, 1150 -110, 1215 -110',
  },
  {
    tags: { tourism: 'caravan_site', name: 'Tarn Park', motorhome: 'yes', sanitary_dump_station: 'yes' },
    ring: '-4760 -830, -4430 -850, -4420 -750, -4560 -620, -4740 -640',
  },
  {
    tags: { tourism: 'camp_site', name: 'Beckside', surface: 'grass', motorhome: 'yes' },
    ring: '-2860 -1700, -2860 -1880, -2660 -1900, -2580 -1640, -2720 -1630',
  },
  {
    tags: {
      amenity: 'parking',
      name: 'Gannet Sands car park',
      parking: 'surface',
      maxheight: '2.1',
      fee: 'yes',
    },
    ring: '560 -4890, 870 -4900, 920 -5010, 700 -5010, 600 -4960',
  },
  {
    tags: { amenity: 'parking', name: 'Castle Street car park', parking: 'surface' },
    ring: '60 300, 170 285, 175 330, 65 350',
  },
];

/** The house over the passage; nothing else is built there. */
export const BELL_INN: AreaPlan = {
  tags: { building: 'commercial', name: 'The Bell' },
  ring: '-215 -245, -260 -260, -258 -225, -213 -212',
};

export const SITE_SPOTS: readonly SpotPlan[] = [
  {
    x: 2045,
    y: 500,
    tags: {
      amenity: 'fuel',
      name: 'Staithe Garage',
      'fuel:diesel': 'yes',
      'fuel:lpg': 'yes',
      opening_hours: 'Mo-Su 06:00-22:00',
    },
  },
  { x: -4605, y: -655, tags: { amenity: 'water_point', name: 'Tarn Park water' } },
  {
    x: -4600,
    y: -668,
    tags: {
      amenity: 'sanitary_dump_station',
      'sanitary_dump_station:chemical_toilet': 'yes',
      'sanitary_dump_station:grey_water': 'yes',
      access: 'customers',
    },
  },
  { x: -2835, y: -1725, tags: { amenity: 'water_point' } },
  {
    x: 170,
    y: 1120,
    tags: {
      amenity: 'sanitary_dump_station',
      name: 'Ring Road dump point',
      access: 'yes',
      opening_hours: 'Mo-Sa 07:00-19:00',
    },
  },
  { x: 470, y: -4720, tags: { amenity: 'toilets' } },
  ...HARBOUR_SPOTS,
];
