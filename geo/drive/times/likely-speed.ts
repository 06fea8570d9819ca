import { lookUp } from '../../country/look-up.ts';
import type { Tags } from '../../roads/roads.ts';
import { textOf } from '../../tags/text-of.ts';
import type { LegalLimit } from './legal-limit.ts';
import { readSpeed } from './read-speed.ts';

/** A speed and what holds it there. km/h. */
interface LikelySpeed {
  readonly kmh: number;
  readonly held: string;
}

/** A loaded motorhome seldom cruises faster, whatever the law allows. Common practice, no source. */
const CRUISE_KMH = 100;

/** Share of the legal speed that a careful driver averages between junctions. Common practice, no source. */
const SHARE_OUTSIDE: Readonly<Record<string, number>> = {
  motorway: 0.95,
  trunk: 0.9,
  primary: 0.85,
  secondary: 0.78,
  tertiary: 0.7,
  unclassified: 0.5,
  residential: 0.5,
  road: 0.5,
};
const SHARE_IN_TOWN = 0.8;

/** km/h by class where the law's figure means little. Common practice, no source. */
const CLASS_CAP: Readonly<Record<string, number>> = {
  motorway_link: 60,
  trunk_link: 55,
  primary_link: 50,
  secondary_link: 45,
  tertiary_link: 40,
  living_street: 10,
  pedestrian: 7,
  service: 20,
  track: 20,
  path: 7,
  footway: 7,
};
const SURFACE_CAP: Readonly<Record<string, number>> = {
  compacted: 50,
  fine_gravel: 40,
  gravel: 35,
  unpaved: 35,
  pebblestone: 25,
  sett: 40,
  cobblestone: 25,
  unhewn_cobblestone: 20,
  ground: 20,
  dirt: 20,
  earth: 20,
  grass: 10,
  grass_paver: 15,
  mud: 8,
  sand: 8,
  wood: 20,
};
const SMOOTHNESS_CAP: Readonly<Record<string, number>> = {
  bad: 35,
  very_bad: 15,
  horrible: 8,
  very_horrible: 5,
  impassable: 5,
};
const TRACKTYPE_CAP: Readonly<Record<string, number>> = {
  grade1: 30,
  grade2: 25,
  grade3: 20,
  grade4: 12,
  grade5: 8,
};

/** Two cars pass on 4.1 m (Manual for Streets, second-hand); below that one gives way. */
const GIVE_WAY_UNDER_M = 4.1;

/** The speed likely driven under a legal limit: the lowest of class, surface, width and what is advised. */
export function likelySpeed(tags: Tags, legal: LegalLimit): LikelySpeed {
  const highway = textOf(tags, 'highway');
  const legalKmh = legal.kmh ?? CRUISE_KMH;
  const share = legal.setting.urban ? SHARE_IN_TOWN : (lookUp(SHARE_OUTSIDE, highway) ?? SHARE_IN_TOWN);
  const candidates: LikelySpeed[] = [
    { kmh: CRUISE_KMH, held: 'cruising speed of a loaded motorhome' },
    {
      kmh: legalKmh * share,
      held: legal.setting.urban ? 'town traffic' : `${highway || 'road'} outside towns`,
    },
    capped(CLASS_CAP, highway, highway.replace('_', ' ')),
    capped(SURFACE_CAP, tags['surface'], `surface ${tags['surface']}`),
    capped(SMOOTHNESS_CAP, tags['smoothness'], `smoothness ${tags['smoothness']}`),
    capped(TRACKTYPE_CAP, tags['tracktype'], `tracktype ${tags['tracktype']}`),
    ...narrow(tags),
    ...advised(tags),
  ].filter((candidate) => candidate !== undefined);
  if (tags['junction'] === 'roundabout') candidates.push({ kmh: 25, held: 'roundabout' });
  // no posted walking pace or misread value may make a drive endless
  const least = candidates.reduce((a, b) => (b.kmh < a.kmh ? b : a));
  return { kmh: Math.max(3, least.kmh), held: least.held };
}

function capped(
  caps: Readonly<Record<string, number>>,
  value: string | undefined,
  held: string,
): LikelySpeed | undefined {
  const kmh = lookUp(caps, value);
  return kmh === undefined ? undefined : { kmh, held };
}

function narrow(tags: Tags): LikelySpeed[] {
  if (tags['oneway'] === 'yes' || tags['oneway'] === '-1' || tags['junction'] === 'roundabout') return [];
  const widthM = /^(\d+(?:\.\d+)?)(?: ?m)?$/.exec(tags['width'] ?? textOf(tags, 'est_width'))?.[1];
  if (widthM !== undefined && Number(widthM) < 3) return [{ kmh: 30, held: `width ${widthM} m` }];
  if (widthM !== undefined && Number(widthM) < GIVE_WAY_UNDER_M)
    return [{ kmh: 40, held: `width ${widthM} m` }];
  return tags['lanes'] === '1' ? [{ kmh: 40, held: 'single track' }] : [];
}

function advised(tags: Tags): LikelySpeed[] {
  for (const key of ['maxspeed:practical', 'maxspeed:advisory']) {
    const text = tags[key];
    const read = text === undefined ? undefined : readSpeed(text);
    if (read?.kind === 'kmh') return [{ kmh: read.kmh, held: `${key}=${text}` }];
  }
  return [];
}
