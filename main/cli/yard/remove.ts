import { given } from '../../../geo/given.ts';
import type { Kind } from '../../../geo/library/record.ts';
import { fail, ok } from '../../../geo/result.ts';
import { findItem, nameOf, sayItem } from '../../services/library/find-item.ts';
import { jsonText } from '../json-text.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';

/** Puts an item of a kind into the bin. @param needs what is said where no id was typed */
function removeCommand(kind: Kind, needs: string): YardCommand {
  return async (words, _terminal, library) => {
    const read = readWords(words, { once: [], flags: ['json'], bare: 1 });
    if (!read.ok) return read;
    const [typed] = read.value.bare;
    if (typed === undefined) return fail('usage', `${needs} ${USAGE_HINT}`);
    const found = findItem(library, kind, typed);
    if (!found.ok) return found;
    const removed = await library.remove(found.value);
    if (!removed.ok) return removed;
    const { id } = found.value;
    return ok({
      text: read.value.flag('json')
        ? jsonText({ removed: id, ...given({ name: nameOf(found.value) }) })
        : `${sayItem(found.value)} lies in the bin for 90 days.\n`,
    });
  };
}

/** `yard remove ID`: puts a drive into the bin. */
export const yardRemove = removeCommand('drive', 'yard remove needs the id of a drive.');
/** `yard vehicle remove ID`: puts a vehicle into the bin. */
export const vehicleRemove = removeCommand('vehicle', 'yard vehicle remove needs the id of a vehicle.');
/** `yard note remove ID`: puts a note into the bin. */
export const noteRemove = removeCommand('note', 'yard note remove needs the id of a note.');
