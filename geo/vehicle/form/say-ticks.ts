import { counted } from '../../units/text.ts';
import { KINDS } from './place-rows.ts';
import type { ReadPlaces } from './read-places.ts';

/** The ticks in words, as the drawing's name ends; nothing where there are none. */
export function sayTicks(rows: ReadPlaces['rows']): string {
  const said = KINDS.flatMap(({ kind, one }) => {
    const count = rows[kind].filter(({ xM }) => xM !== undefined).length;
    return count === 0 ? [] : [counted(count, one.toLowerCase())];
  });
  return said.length === 0 ? '' : ` Marked in it: ${said.join(', ')}.`;
}
