import { lengthIn, type Units } from '../../units/in-units.ts';

/** Where no road is mapped: a farm track or a car park, at best. Common practice, no source. */
export const OFF_MAP_KMH = 20;

/** A default that the timetable used: a sentence, or what it says of so many metres. */
export type TimeNote =
  | string
  | { readonly kind: 'no limit mapped' | 'off the map'; readonly lengthM: number };

/** A note of the timetable as a sentence. */
export function sayTimeNote(note: TimeNote, units: Units): string {
  if (typeof note === 'string') return note;
  const length = lengthIn(units, note.lengthM);
  return note.kind === 'no limit mapped'
    ? `No speed limit is mapped on ${length}: general limits are used there.`
    : `${length} lie off the mapped roads: ${OFF_MAP_KMH} km/h is assumed there.`;
}
