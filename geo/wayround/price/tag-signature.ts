import type { Tags } from '../../roads/roads.ts';
import { textOf } from '../../tags/text-of.ts';

/**
 * What no rule and no speed reads: names and numbers, where they come from, notes, signposts, lines painted for turning,
 * ground beside the road that others walk and ride on, railways in its surface.
 */
const SAYS_NOTHING =
  /^((alt_|official_|old_|short_|loc_|int_|nat_|reg_)?(name|ref)(:|$)|source(:(?!maxspeed)|$)|wikidata$|wikipedia|postal_code$|created_by$|start_date$|check_date|survey:date$|operator|tiger:|is_in|addr:|image|mapillary|description$|destination(:|$)|turn(:|$)|change(:|$)|note(:|$)|fixme|FIXME|[lnr][cw]n(_|$)|overtaking|priority_road$|transit(:|$)|embankment$|lane_markings$|mtb|sac_scale$|class:|cycleway|bicycle$|foot$|horse$|TMC|razed:|railway:|piste|heritage)/;

/** What speeds read and no rule does. */
const SPEED_ALONE = /^((source:)?maxspeed|zone:|lit$|sidewalk)/;

/** What a road's tags say for our purposes, as one text: roads that differ in their names alone are judged once. */
export function tagSignature(tags: Tags): string {
  let text = '';
  for (const key in tags) if (readBy(key) !== READ_BY.none) text += `${key}=${tags[key]}\n`;
  return text;
}

const READ_BY = { none: 0, speeds: 1, rules: 2 } as const;
/** Keys met, each looked at once; a map of odd ones does not fill the memory. */
const met = new Map<string, number>();
const MOST_MET = 10_000;

function readBy(key: string): number {
  const known = met.get(key);
  if (known !== undefined) return known;
  const by = SAYS_NOTHING.test(key) ? READ_BY.none : SPEED_ALONE.test(key) ? READ_BY.speeds : READ_BY.rules;
  if (met.size < MOST_MET) met.set(key, by);
  return by;
}

/** The same without what only its speed hangs on: the checker's rules, the dear part, are asked once for each. */
export function ruleSignature(tags: Tags): string {
  let text = '';
  for (const key in tags) if (isRead(key)) text += `${key}=${tags[key]}\n`;
  return text;
}

/** Whether some rule may read a key. */
export function isRead(key: string): boolean {
  return readBy(key) === READ_BY.rules;
}

/** Everything that how fast a road is driven, and how that is weighed, is read from. */
const PACE =
  /^(highway|living_street|dual_carriageway|motorroad|oneway|junction|surface|smoothness|tracktype|lit|lanes|sidewalk(:both)?|(est_)?width|width:(effective|carriageway)|parking:.*|source:maxspeed|zone:(maxspeed|traffic)|maxspeed(:(type|motorhome|motor_vehicle|hgv|practical|advisory))?(:(forward|backward|both_ways))?)$/;

/** The same of what `paceOf` reads alone. */
export function paceSignature(tags: Tags): string {
  let text = '';
  for (const key in tags) if (isPace(key)) text += `${key}=${tags[key]}\n`;
  return text;
}

const metPace = new Map<string, boolean>();

function isPace(key: string): boolean {
  const known = metPace.get(key);
  if (known !== undefined) return known;
  const is = PACE.test(key);
  if (metPace.size < MOST_MET) metPace.set(key, is);
  return is;
}

const DIRECTION = /oneway|forward|backward|incline|direction|junction|priority/;

/** Whether a road may be another matter driven the other way; where its tags name no direction it is judged once. */
export function hasDirection(tags: Tags): boolean {
  if (tags['highway']?.startsWith('motorway') === true) return true;
  for (const key in tags)
    if (readBy(key) !== READ_BY.none && (DIRECTION.test(key) || DIRECTION.test(textOf(tags, key))))
      return true;
  return false;
}
