import type { LocalNote } from './note.ts';

const NO_NOTES: readonly LocalNote[] = [];
const known = new WeakMap<readonly LocalNote[], Map<string, readonly LocalNote[]>>();

/**
 * The notes that hold on a day (2027-06-12); the last day of one counts. One and the same list for each day, whatever
 * vehicle asks.
 * @param moment the day, or any time of it, on the clock of the place
 */
export function notesHolding(notes: readonly LocalNote[] = NO_NOTES, moment: string): readonly LocalNote[] {
  const day = moment.slice(0, 'yyyy-mm-dd'.length);
  const days = known.get(notes) ?? new Map<string, readonly LocalNote[]>();
  known.set(notes, days);
  const holding = days.get(day) ?? notes.filter(({ until }) => until === undefined || day <= until);
  days.set(day, holding);
  return holding;
}
