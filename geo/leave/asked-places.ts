import type { Along } from '../rules/along.ts';
import type { Draft } from '../rules/finding.ts';
import type { Place } from '../rules/places.ts';
import { hoursIn } from '../tags/conditional/next-change.ts';
import { parseConditional } from '../tags/conditional/parse.ts';

/** A place where rules asked what the clock shows; every other place is the same at any hour. */
export interface AskedPlace {
  readonly place: Place;
  /** every text of hours mapped there */
  readonly hours: ReadonlySet<string>;
}

/** One place of a drive, told from another pass through it. */
export type PlaceKey = string;

export function keyOf({ type, id, forward, fromM }: Place): PlaceKey {
  return `${type}${id}${forward}${fromM}`;
}

/** The place that alone a draft is about. */
export function placeOfDraft({ run }: Draft): PlaceKey | undefined {
  const [only] = run;
  return run.length === 1 && only.place !== undefined ? keyOf(only.place) : undefined;
}

/**
 * The clock of a drive, and a list of the places that were judged by it. What never asks at one hour never asks: until
 * the clock is asked, every hour is alike.
 */
export function watchClock(along: Along): { along: Along; asked: Map<PlaceKey, AskedPlace> } {
  const asked = new Map<PlaceKey, AskedPlace>();
  const clockAt: Along['clockAt'] = (m, judged) => {
    if (judged !== undefined) note(asked, judged);
    return along.clockAt(m, judged);
  };
  return { along: { ...along, clockAt }, asked };
}

function note(asked: Map<PlaceKey, AskedPlace>, place: Place): void {
  const key = keyOf(place);
  const known = asked.get(key);
  if (known?.place.tags === place.tags) return;
  const hours = new Set(known?.hours ?? []);
  for (const tags of [place.tags, place.wayTags])
    for (const text of Object.values(tags)) for (const each of hoursOf(text)) hours.add(each);
  asked.set(key, { place: known?.place ?? place, hours });
}

/** The texts of hours in the value of a tag. */
export function hoursOf(text: string): string[] {
  if (!text.includes('@')) return [];
  const parsed = parseConditional(text);
  return parsed.ok ? parsed.value.clauses.flatMap((clause) => hoursIn(clause.parts)) : [];
}
