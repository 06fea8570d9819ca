import { hostileText, numberText } from './hostile.ts';
import { conditionalText } from './hours.ts';
import type { Random } from './random.ts';

const WAY_KEYS = (
  'maxheight maxheight:physical maxwidth maxwidth:physical maxweight maxweight:hgv maxweightrating maxaxleload ' +
  'maxbogieload maxlength maxheight:forward maxweight:backward maxheight:lanes access vehicle motor_vehicle motorcar ' +
  'motorhome motor_vehicle:forward access:lanes oneway oneway:motor_vehicle width est_width lanes lane_markings surface ' +
  'smoothness tracktype incline ford tunnel bridge covered layer junction toll service maxspeed lit name ref hazard ' +
  'traffic_sign note barrier construction area'
).split(' ');
const NODE_KEYS = (
  'barrier access motor_vehicle maxwidth maxwidth:physical maxheight highway railway traffic_calming width ford hazard ' +
  'crossing locked bollard'
).split(' ');
const CONDITIONAL_KEYS = [
  'access',
  'vehicle',
  'motor_vehicle',
  'motorhome',
  'maxweight',
  'maxheight',
  'maxspeed',
  'oneway',
];
const WORDS = (
  'yes no private destination permissive customers delivery agricultural forestry designated permit unknown none default ' +
  'unsigned below_default no_sign -1 reversible alternating bollard gate lift_gate height_restrictor asphalt gravel ' +
  'track residential service primary motorway footway busway DE:265 GB:629A up down 5% 10° steep'
).split(' ');
const UNITS = [
  '',
  '',
  ' m',
  'm',
  ' t',
  't',
  "'",
  '\'6"',
  ' ft',
  ' kg',
  ' st',
  ' lbs',
  ' cm',
  '%',
  '|2.5',
  ';3',
  ' tonnes',
];

export function tagValue(random: Random): string {
  return random.pick([
    () => `${numberText(random)}${random.pick(UNITS)}`,
    () => `${1 + random.below(5)}.${random.below(10)}${random.pick(UNITS)}`,
    () => random.pick(WORDS),
    () => hostileText(random),
    () => random.pick(WORDS) + random.pick([';', '|', ' ', ',']) + random.pick(WORDS),
    () => conditionalText(random),
  ])();
}

export function randomTags(random: Random, of: 'way' | 'node'): Record<string, string> {
  const tags: Record<string, string> =
    of === 'node'
      ? {}
      : {
          highway: random.pick([
            'residential',
            'primary',
            'service',
            'track',
            'unclassified',
            'footway',
            'busway',
          ]),
        };
  for (let count = random.below(5); count > 0; count--)
    if (random.chance(0.25)) tags[`${random.pick(CONDITIONAL_KEYS)}:conditional`] = conditionalText(random);
    else tags[random.pick(of === 'node' ? NODE_KEYS : WAY_KEYS)] = tagValue(random);
  if (random.chance(0.02)) tags[hostileText(random)] = hostileText(random);
  return tags;
}
