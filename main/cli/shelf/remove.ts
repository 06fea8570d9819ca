import { fail, ok } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { removeByName } from '../../services/shelf/shelf-work.ts';
import { jsonText } from '../json-text.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';
import type { ShelfCommand } from './command.ts';

/** `shelf remove NAME`: takes a map off the shelf. Whoever types its name means it. */
export const shelfRemove: ShelfCommand = async (words, _terminal, { shelf }) => {
  const read = readWords(words, { once: [], flags: ['json'], bare: 1 });
  if (!read.ok) return read;
  const [name] = read.value.bare;
  if (name === undefined) return fail('usage', `shelf remove needs the name of a map. ${USAGE_HINT}`);
  const removed = await removeByName(shelf, name);
  if (!removed.ok) return removed;
  return ok({
    text: read.value.flag('json') ? jsonText({ removed: name }) : `${quote(name)} is off the shelf.\n`,
    exit: 0,
  });
};
