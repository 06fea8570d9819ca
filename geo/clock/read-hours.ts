import OpeningHours from 'opening_hours';
import { plainHours } from './plain-hours.ts';

/** Where and how a text is read: the library takes the position, the country and its part as they are here. */
export interface ReadingPlace {
  readonly lat: number;
  readonly lon: number;
  /** ISO 3166-1 alpha-2, lower case; '' where it is not known */
  readonly country: string;
  /** part of the country whose holidays count; '' for the country's own */
  readonly state: string;
}

/** The library's guesses that may turn the meaning round; hours read so are not believed. */
const DISBELIEVED: ReadonlySet<string> = new Set([
  'interpreted_as_year',
  'zero_calculation',
  'nothing_useful',
  'switched',
]);

/** Reading costs milliseconds, and one tag is asked about many times: at each pass, for the next change, per vehicle. */
const MOST_KEPT = 200;
const kept = new Map<string, OpeningHours | undefined>();

/**
 * Hours in the opening_hours syntax, read once; the same text at the same place gives the same object.
 * @returns undefined where they cannot be read, or only by a guess that is not believed
 */
export function readHours(text: string, place: ReadingPlace): OpeningHours | undefined {
  const key = JSON.stringify([text, place.lat, place.lon, place.country, place.state]);
  if (kept.has(key)) return kept.get(key);
  const plain = plainHours(text);
  const hours = plain === undefined ? undefined : quietly(() => read(plain, place));
  if (kept.size === MOST_KEPT) kept.delete(kept.keys().next().value ?? key);
  kept.set(key, hours);
  return hours;
}

function read(text: string, { lat, lon, country, state }: ReadingPlace): OpeningHours | undefined {
  try {
    // the library's types ask for numbers, but it takes only strings, and without them sets sunset at 18:00
    const position = { lat: String(lat), lon: String(lon) } as unknown as { lat: number; lon: number };
    const hours = new OpeningHours(text, { ...position, address: { country_code: country, state } });
    return warningsOf(hours).some((type) => DISBELIEVED.has(type)) ? undefined : hours;
  } catch {
    return undefined;
  }
}

/** It never comes to a next state. */
const STANDING = { advance: () => false } as unknown as ReturnType<OpeningHours['getIterator']>;

/**
 * What the library has to remark on a text. It would first walk through five years, day by day and sunset by sunset,
 * for a remark that has no bearing here: that takes up to half a second, and is kept from it.
 */
function warningsOf(hours: OpeningHours): string[] {
  const walk = hours.getIterator;
  hours.getIterator = () => STANDING;
  try {
    return hours.getStructuredWarnings().map(({ type }) => type);
  } finally {
    hours.getIterator = walk;
  }
}

const ignore = () => undefined;
const SILENT = { log: ignore, info: ignore, warn: ignore, error: ignore };

/** Runs the library without its remarks: it prints what it stumbles over, and the report says that in its own words. */
export function quietly<T>(work: () => T): T {
  const host = globalThis as { console?: unknown };
  const before = host.console;
  host.console = SILENT;
  try {
    return work();
  } finally {
    host.console = before;
  }
}
