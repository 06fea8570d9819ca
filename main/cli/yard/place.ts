import { ok, type Result } from '../../../geo/result.ts';
import { holdsRecords, type LibraryPlace } from '../../services/library/library-place.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { YardSaid } from './command.ts';

/**
 * `yard place [FOLDER]`: where the library of this computer lies; with a folder, from now on there.
 * @param pathOf the folder that is meant by what was typed
 */
export async function yardPlace(
  words: readonly string[],
  place: LibraryPlace,
  pathOf: (typed: string) => string,
): Promise<Result<YardSaid>> {
  const read = readWords(words, { once: [], flags: ['json'], bare: 1 });
  if (!read.ok) return read;
  const { bare, flag } = read.value;
  const [typed] = bare;
  const before = place.folder();
  if (typed === undefined)
    return ok({ text: flag('json') ? jsonText({ folder: before }) : `The library lies in ${before}.\n` });
  const chosen = await place.choose(pathOf(typed));
  if (!chosen.ok) return chosen;
  const folder = chosen.value;
  const stays =
    before === folder || !(await holdsRecords(before))
      ? ''
      : ` What lies in ${before} stays there: to have both in one, copy its folders records, gpx and handed into the new one; nothing can clash.`;
  return ok({
    text: flag('json')
      ? jsonText({ folder, before })
      : `The library lies in ${folder} from now on.${stays}\n`,
  });
}
