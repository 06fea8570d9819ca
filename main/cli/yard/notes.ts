import { ok } from '../../../geo/result.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { YardCommand } from './command.ts';
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
