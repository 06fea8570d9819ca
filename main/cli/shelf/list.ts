import { ok } from '../../../geo/result.ts';
import { codeOf } from '../../services/files/system-error.ts';
import { listMaps } from '../../services/shelf/list-maps.ts';
import { shelfUnreadable } from '../../services/shelf/shelf-unreadable.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { ShelfCommand } from './command.ts';
import { EMPTY_SHELF, printMaps } from './print-maps.ts';

/** `shelf list`: what is on the shelf. Exit 1 where something on it is damaged. */
export const shelfList: ShelfCommand = async (words, _terminal, { shelf }) => {
  const read = readWords(words, { once: [], flags: ['json'] });
  if (!read.ok) return read;
  try {
    const maps = await listMaps(shelf);
    const exit = maps.some(({ state }) => state === 'damaged') ? 1 : 0;
    if (read.value.flag('json')) return ok({ text: jsonText({ maps }), exit });
    return ok({ text: maps.length === 0 ? EMPTY_SHELF : printMaps(maps), exit });
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return shelfUnreadable(shelf, error);
  }
};
