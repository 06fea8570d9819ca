import type { SitePlan, SpotPlan, Tags, Through } from './words.ts';

const QUAY: Tags = {
  highway: 'unclassified',
  surface: 'asphalt',
  maxspeed: '20 mph',
  oneway: 'yes',
  lit: 'yes',
};
const HOLM: Tags = {
  highway: 'unclassified',
  surface: 'asphalt',
  maxspeed: '30 mph',
  lanes: '1',
  width: '3.5',
};

/** The check-in lanes, the pier, and the roads of the island that the ferry goes to. */
export const HARBOUR_ROADS: readonly SitePlan[] = [
  {
    key: 'quay-in',
    through: '7500 640, 7620 668, 7800 650',
    tags: { ...QUAY, name: 'Check-in Lanes', lanes: '2' },
    span: { fromM: 150, toM: 185, tags: { 'maxheight:lanes': '3.0|4.4', covered: 'yes' } },
  },
  {
    key: 'quay-out',
    through: '7800 650, 7700 600, 7600 590, 7500 640',
    tags: { ...QUAY, name: 'Quay Exit' },
  },
  {
    key: 'pier',
    through: '7800 650, 7980 620, 8330 600',
    tags: { ...QUAY, oneway: 'no', name: 'Ferry Pier', incline: '-6%' },
  },
  {
    key: 'holm',
    through: '9690 300, 9950 350, 10250 500, 10700 600, 11100 500',
    tags: { ...HOLM, name: 'Holm Road', passing_places: 'yes' },
  },
  {
    key: 'holm-loop',
    through: '10250 500, 10300 150, 10500 -130, 10900 -130, 11120 180, 11100 500',
    tags: { ...HOLM, name: 'Loop Road' },
  },
  {
    key: 'holm-shore-road',
    through: '10700 600, 10600 880, 10350 1050',
    tags: { ...HOLM, name: 'Cove Lane', surface: 'gravel' },
  },
];

export const HARBOUR_SPOTS: readonly SpotPlan[] = [
  { x: 10660, y: 640, tags: { place: 'hamlet', name: 'Holm Green' } },
  { x: 10500, y: 300, tags: { place: 'island', name: 'Marrel Holm' } },
];

/** From the outermost point of one road to that of the other. */
export const FERRY: {
  readonly from: string;
  readonly to: string;
  readonly through: Through;
  readonly tags: Tags;
} = {
  from: 'pier',
  to: 'holm',
  through: '8700 620, 9300 420',
  tags: {
    route: 'ferry',
    name: 'Marrel Ferry',
    motor_vehicle: 'yes',
    foot: 'yes',
    maxlength: '8',
    maxheight: '3.8',
    duration: '00:12',
  },
};
