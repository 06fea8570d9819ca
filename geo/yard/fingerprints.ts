import type { Sha256 } from '../library/record-name.ts';
import { orderedText } from '../library/write-record.ts';
import { notesHolding } from '../notes/holding.ts';
import type { LocalNote } from '../notes/note.ts';
import type { Box } from '../roads/box.ts';

/** The hash of a value, in whatever order its members came. */
export function hashOf(value: unknown, sha256: Sha256): string {
  return sha256(orderedText(value));
}

/** The notes that hold about a drive at a moment. */
export function notesAbout(notes: readonly LocalNote[], box: Box, moment: string): readonly LocalNote[] {
  return notesHolding(notes, moment).filter(({ at: { lat, lon } }) => {
    const between = [-360, 0, 360].some((turn) => lon + turn >= box.west && lon + turn <= box.east);
    return lat >= box.south && lat <= box.north && between;
  });
}

/** Each note by its id and what it says. */
export function notePrints(notes: readonly LocalNote[], sha256: Sha256): string[] {
  return notes.map((note) => `${note.id} ${hashOf(note, sha256).slice(0, 20)}`).sort();
}
