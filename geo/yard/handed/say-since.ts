import { listed } from '../../units/text.ts';

/** What of a handed-out check can have changed since. */
export const SINCE = [
  'map',
  'map gone',
  'card',
  'load',
  'note',
  'day',
  'program',
  'vehicle gone',
  'drive gone',
] as const;
export type Since = (typeof SINCE)[number];

const SAY: Readonly<Record<Since, string>> = {
  map: 'the map is another',
  'map gone': 'the map it was checked on is on the shelf no more',
  card: 'the vehicle card was changed',
  load: 'the load was changed',
  note: 'a local note was added, changed or ended',
  day: 'the leave time or the day that the yard keeps with the drive is another',
  program: 'the program is another version',
  'vehicle gone': 'the vehicle is off the fleet',
  'drive gone': 'the drive is in the bin',
};

/** Why, in words; '' for nothing. */
export function saySince(since: readonly Since[]): string {
  return listed(since.map((each) => SAY[each]));
}
