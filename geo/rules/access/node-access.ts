import type { Tags } from '../../roads/roads.ts';
import { isAccessKey, taggedAccess } from '../../tags/access.ts';
import type { Reach } from '../../tags/conditional/context.ts';
import { textOf } from '../../tags/text-of.ts';
import { reachOf, siteRuns } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { type Place, passedNodes } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { judgeAccess } from './judge-access.ts';
import { isJunction } from './junction.ts';
import { sayOfJunction, sayOfPoint, sayOfThing } from './say-access.ts';

/** What is crossed, waited at or gone into on the road: who may is said of that. */
const OF_OTHERS: Readonly<Record<string, RegExp>> = {
  highway: /^(crossing|bus_stop|elevator|platform|street_lamp|trailhead)$/,
  railway: /^(crossing|tram_crossing|stop|station|halt|tram_stop|subway_entrance)$/,
};
const THINGS = [
  'crossing',
  'public_transport',
  'amenity',
  'entrance',
  'shop',
  'tourism',
  'leisure',
  'office',
  'emergency',
  'natural',
  'man_made',
];

/**
 * Access mapped on a point of the driven road where no barrier stands: as on a road.
 * On a thing beside or across the road only motor keys count, and they prove little.
 */
export function nodeAccess(input: RuleInput): Draft[] {
  const places = passedNodes(input.drive, input.roads).filter(
    ({ tags }) => tags['barrier'] === undefined && Object.keys(tags).some(isAccessKey),
  );
  if (places.length === 0) return [];
  const runs = siteRuns(input);
  return places.flatMap((place) => judgeNode(input, place, reachOf(place, runs)));
}

function judgeNode(input: RuleInput, place: Place, reach: Reach): Draft[] {
  const ofOthers = isOfOthers(place.tags);
  const tags = ofOthers ? motorTags(place.tags) : place.tags;
  const deciding = taggedAccess({ tags, forward: place.forward });
  const { said, beside } = judgeAccess({
    input,
    place: { ...place, tags },
    reach,
    advisedReach: reach,
    deciding,
  });
  const drafts = [...(said === undefined ? [] : [said]), ...beside].map(
    (each): Draft => ({ ...each, subject: 'access', run: runOf(place), say: sayOfPoint(each.say) }),
  );
  if (ofOthers)
    return drafts.map((draft) => ({
      ...draft,
      level: 'unknown',
      wants: 'sign',
      folded: true,
      ...sayOfThing(draft.say),
    }));
  if (!drafts.some(({ level }) => level === 'barred') || !isJunction(input.roads, place.index)) return drafts;
  return drafts.map((draft) =>
    draft.level === 'barred'
      ? { ...draft, level: 'unknown', wants: 'sign', ...sayOfJunction(draft.say) }
      : draft,
  );
}

function isOfOthers(tags: Tags): boolean {
  return (
    THINGS.some((key) => tags[key] !== undefined) ||
    Object.entries(OF_OTHERS).some(([key, values]) => values.test(textOf(tags, key)))
  );
}

function motorTags(tags: Tags): Tags {
  return Object.fromEntries(
    Object.entries(tags).filter(([key]) => isAccessKey(key) && !/^(access|motorcar)\b/.test(key)),
  );
}
