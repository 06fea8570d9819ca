import { fail, ok } from '../../../geo/result.ts';
import { jsonText } from '../json-text.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';
import { findItem } from './find-item.ts';
import { printNote } from './print-note.ts';
import { toldVersions } from './told-versions.ts';

/** `yard note list`: what the firm knows. */
export const noteList: YardCommand = async (words, _terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'] });
  if (!read.ok) return read;
  const notes = library.list('note');
  if (read.value.flag('json'))
    return ok({
      text: jsonText({
        notes: notes.map((item) => ({
          id: item.id,
          ...item.versions[0]?.body,
          ...toldVersions(item, ({ say }) => say),
        })),
      }),
    });
  const none = 'No notes yet. Make one with: lanegauge yard note add --at LAT,LON --say TEXT --height 3.4\n';
  return ok({ text: notes.length === 0 ? none : notes.map(printNote).join('') });
};

/** `yard note remove ID`: puts a note into the bin. */
export const noteRemove: YardCommand = async (words, _terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'], bare: 1 });
  if (!read.ok) return read;
  const [typed] = read.value.bare;
  if (typed === undefined) return fail('usage', `yard note remove needs the id of a note. ${USAGE_HINT}`);
  const found = findItem(library, 'note', typed);
  if (!found.ok) return found;
  const removed = await library.remove(found.value);
  if (!removed.ok) return removed;
  const { id } = found.value;
  return ok({
    text: read.value.flag('json') ? jsonText({ removed: id }) : `${id} lies in the bin for 90 days.\n`,
  });
};
