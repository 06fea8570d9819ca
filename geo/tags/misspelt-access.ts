import { slips } from '../units/slips.ts';

/** The keys a mapper can have meant, with the slips of the hand that still leave each readable. */
const MEANT: readonly (readonly [key: string, most: number])[] = [
  ['access', 1],
  ['vehicle', 1],
  ['motor_vehicle', 2],
  ['motorhome', 2],
];

/** Keys of many roads that are near one of these and no slips. */
const OTHERS = new Set(['motorcar', 'motorcycle', 'motor_bicycle', 'motorboat', 'motorway']);

/** Every key of a road is asked about, and a map has few different ones: what each is meant to be is found once. */
const found = new Map<string, string | undefined>();
const MOST_KEPT = 4096;

/**
 * The access key that a first part of a key was most likely meant to be: `acess`, `motorvehicle`, `Vehicle`.
 * @returns undefined for the keys themselves and for everything that is further from each of them
 */
export function accessMeant(part: string): string | undefined {
  if (!found.has(part)) {
    if (found.size >= MOST_KEPT) found.clear();
    found.set(part, find(part));
  }
  return found.get(part);
}

function find(part: string): string | undefined {
  if (part.length > 16 || OTHERS.has(part)) return undefined;
  const lower = part.toLowerCase();
  const near = MEANT.find(
    ([key, most]) => Math.abs(key.length - lower.length) <= most && slips(lower, key) <= most,
  );
  return near === undefined || near[0] === part ? undefined : near[0];
}
