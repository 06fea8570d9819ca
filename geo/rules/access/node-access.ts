import type { Tags } from '../../roads/roads.ts';
import { taggedAccess } from '../../tags/access.ts';
import { isMotorhomeMode } from '../../tags/modes.ts';
import { isWithin, siteRuns } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { type Place, passedNodes } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { judgeAccess } from './judge-access.ts';
import { isJunction } from './junction.ts';

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
  const runs = siteRuns(input.drive, input.roads);
  return places.flatMap((place) => judgeNode(input, place, isWithin(place, runs)));
}

function isAccessKey(key: string): boolean {
  const mode = key.split(':', 1)[0] ?? '';
  return isMotorhomeMode(mode) || mode === 'motorcar';
}

function judgeNode(input: RuleInput, place: Place, within: boolean): Draft[] {
  const ofOthers = isOfOthers(place.tags);
  const tags = ofOthers ? motorTags(place.tags) : place.tags;
  const { words, beside } = judgeAccess(input, { ...place, tags }, within, taggedAccess(tags, place.forward));
  const drafts = [...(words === undefined ? [] : [words]), ...beside].map((each) => ({
    ...each,
    subject: 'access' as const,
    run: runOf(place),
    say: `A point on the road: ${lowerFirst(each.say)}`,
  }));
  if (ofOthers)
    return drafts.map((draft) => ({
      ...draft,
      level: 'unknown' as const,
      folded: true,
      say: `${draft.say} It is mapped on a thing beside or across the road, and may be said of that.`,
      advice: 'Look for a sign there.',
    }));
  if (!drafts.some(({ level }) => level === 'barred') || !isJunction(input.roads, place.index)) return drafts;
  return drafts.map((draft) =>
    draft.level !== 'barred'
      ? draft
      : {
          ...draft,
          level: 'unknown' as const,
          say: `${draft.say} It is mapped on a junction and may be meant for the side road.`,
          advice: 'Look for the sign, or take another road.',
        },
  );
}

function isOfOthers(tags: Tags): boolean {
  return (
    THINGS.some((key) => tags[key] !== undefined) ||
    Object.entries(OF_OTHERS).some(([key, values]) => values.test(tags[key] ?? ''))
  );
}

function motorTags(tags: Tags): Tags {
  return Object.fromEntries(
    Object.entries(tags).filter(([key]) => isAccessKey(key) && !/^(access|motorcar)\b/.test(key)),
  );
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
