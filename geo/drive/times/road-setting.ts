import type { SpeedClass } from '../../country/rule.ts';
import { given } from '../../given.ts';
import type { Tags } from '../../roads/roads.ts';
import { isSlipRoad, RANK, rankOf } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import { readSpeed, type SpeedContext } from './read-speed.ts';

/** Where a road lies and what kind it is, as its general speed limit sees it. */
export interface RoadSetting {
  readonly urban: boolean;
  readonly livingStreet: boolean;
  readonly speedClass: SpeedClass;
  /** what told it, for the sentence */
  readonly because: string;
  /** country named by the tags themselves, alpha-2 */
  readonly country?: string;
}

/** Keys that say where a limit comes from, the most telling first. */
const ORIGIN_KEYS = ['maxspeed', 'maxspeed:type', 'source:maxspeed', 'zone:maxspeed', 'zone:traffic'];

/** Town streets by their class alone. */
const STREETS = new Set(['residential', 'living_street', 'pedestrian']);

/**
 * Reads the setting from what the tags say of the limit's origin; then from `urban` as the caller knows it;
 * then from class, street lights and footways, which is a guess and is called one.
 */
export function roadSetting(tags: Tags, { urban }: { readonly urban?: boolean } = {}): RoadSetting {
  const highway = textOf(tags, 'highway');
  const livingStreet = highway === 'living_street' || tags['living_street'] === 'yes';
  const speedClass = classFromTags(tags, highway);
  const road = { livingStreet, speedClass };
  for (const key of ORIGIN_KEYS) {
    const text = tags[key];
    const read = text === undefined ? undefined : readSpeed(text);
    if (read?.kind !== 'implied' || read.context === 'national') continue;
    return {
      urban: read.context === 'urban' || read.context === 'living_street',
      ...road,
      livingStreet: livingStreet || read.context === 'living_street',
      speedClass: classFromContext(read.context, speedClass),
      because: `${key}=${text}`,
      ...given({ country: read.country }),
    };
  }
  if (rankOf(highway) === RANK.motorway) return { urban: false, ...road, because: 'motorway' };
  if (urban !== undefined) return { urban, ...road, because: urban ? 'in a town' : 'outside towns' };
  if (STREETS.has(highway) || livingStreet)
    return {
      urban: true,
      ...road,
      because: `${highway.replace('_', ' ')}, taken as in a town`,
    };
  if (looksBuiltUp(tags))
    return {
      urban: true,
      ...road,
      because: 'street lights or footways, taken as in a town',
    };
  return { urban: false, ...road, because: 'no sign of a town, taken as outside' };
}

function classFromContext(context: SpeedContext, fromTags: SpeedClass): SpeedClass {
  if (context === 'motorway') return context;
  // the origin tells one of two things about the road, the tags the other
  if (context === 'expressway') return isDualClass(fromTags) ? 'dualExpressway' : 'expressway';
  if (context === 'dual') return isExpressway(fromTags) ? 'dualExpressway' : 'dual';
  return context === 'single' ? 'rural' : fromTags;
}

function classFromTags(tags: Tags, highway: string): SpeedClass {
  if (rankOf(highway) === RANK.motorway) return 'motorway';
  const motorroad = tags['motorroad'] === 'yes';
  if (isDual(tags, highway)) return motorroad ? 'dualExpressway' : 'dual';
  return motorroad ? 'expressway' : 'rural';
}

function isDualClass(speedClass: SpeedClass): boolean {
  return speedClass === 'dual' || speedClass === 'dualExpressway';
}

function isExpressway(speedClass: SpeedClass): boolean {
  return speedClass === 'expressway' || speedClass === 'dualExpressway';
}

/** A one-way main road that is neither a roundabout nor a slip road is taken for half of a dual carriageway. */
function isDual(tags: Tags, highway: string): boolean {
  const said = tags['dual_carriageway'];
  if (said !== undefined) return said === 'yes';
  const oneway = tags['oneway'] === 'yes' || tags['oneway'] === '-1';
  const rank = rankOf(highway);
  const main = rank >= RANK.trunk && rank <= RANK.secondary && !isSlipRoad(tags);
  return oneway && tags['junction'] === undefined && main;
}

function looksBuiltUp(tags: Tags): boolean {
  if (tags['lit'] === 'yes') return true;
  const footway = tags['sidewalk'] ?? tags['sidewalk:both'];
  return footway === 'both' || footway === 'left' || footway === 'right' || footway === 'yes';
}
