import { given } from '../../../geo/given.ts';
import { fail, ok } from '../../../geo/result.ts';
import { listed } from '../../../geo/units/text.ts';
import { writeNew } from '../../services/files/write-new.ts';
import { findHanded, handedSheets, readHanded } from '../../services/handed/handed-sheets.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';

/** `yard sheet NUMBER --out FOLDER`: writes a handing-over again as it was, byte for byte. */
export const yardSheet: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: ['out'], flags: ['json'], bare: 1 });
  if (!read.ok) return read;
  const [typed] = read.value.bare;
  const out = read.value.one('out');
  if (typed === undefined || out === undefined)
    return fail('usage', `yard sheet needs a sheet number and --out FOLDER. ${USAGE_HINT}`);
  const found = findHanded(library, typed);
  if (!found.ok) return found;
  const files = await readHanded(library, found.value);
  if (!files.ok) return files;
  const folder = pathFrom(terminal.folder, out);
  const written = await writeNew(folder, files.value, terminal.signal);
  if (!written.ok) return written;
  const { number } = found.value.body;
  const names = Object.keys(files.value);
  const newer = handedSheets(library).find(({ body }) => body.replaces === number)?.body.number;
  return ok({
    text: read.value.flag('json')
      ? jsonText({ number, folder, files: names, ...given({ replacedBy: newer }) })
      : `Sheet ${number} as it was handed out, in ${folder}: ${listed(names)}.\n${newer === undefined ? '' : `Sheet ${newer} has taken its place since: drive by that one.\n`}`,
  });
};
