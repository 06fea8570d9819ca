import { sayMoment } from '../clock/print-dates.ts';
import { distanceIn, type Units } from '../units/in-units.ts';
import { clip } from '../units/text.ts';
import { plainName } from '../vehicle/free-name.ts';

/** What of a drive of the library may tell it from another. */
interface Tellable {
  readonly id: string;
  readonly name: string;
  readonly day?: { readonly number: number } | undefined;
  readonly file: string;
  readonly leaveAt?: string | undefined;
  readonly lengthM: number;
}

/**
 * Drives that have their name in common with another, days of a tour aside: by id, the first thing that tells each of
 * them from the others of its name, their file, leave time or length; else their ids.
 */
export function tellApart(drives: readonly Tellable[], units: Units): ReadonlyMap<string, string> {
  const named = new Map<string, Tellable[]>();
  for (const drive of drives) {
    const name = `${drive.day?.number ?? ''} ${plainName(drive.name)}`;
    named.set(name, [...(named.get(name) ?? []), drive]);
  }
  const told = new Map<string, string>();
  for (const alike of named.values()) {
    if (alike.length < 2) continue;
    const words = wordsFor(units).find((word) => new Set(alike.map(word)).size === alike.length);
    for (const drive of alike) told.set(drive.id, words?.(drive) ?? drive.id);
  }
  return told;
}

function wordsFor(units: Units): ((drive: Tellable) => string)[] {
  return [
    ({ file }) => clip(file, 60),
    ({ leaveAt }) => (leaveAt === undefined ? 'without a leave time' : `leaves ${sayMoment(leaveAt)}`),
    ({ lengthM }) => `${distanceIn(units, lengthM)} as drawn`,
  ];
}
