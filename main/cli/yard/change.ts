import { driveName } from '../../../geo/library/body/drive.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { plainLine, quote } from '../../../geo/units/text.ts';
import { sayAlike } from '../../services/library/alike.ts';
import { findItem, refuseTwoVersions } from '../../services/library/find-item.ts';
import { jsonText } from '../json-text.ts';
import { readWords, USAGE_HINT, type WordsRead } from '../read-words.ts';
import type { YardCommand } from './command.ts';

const NAME_MOST = 200;

/** `yard rename ID NAME`: what a drive is called. */
export const yardRename: YardCommand = async (words, _terminal, library) => {
  const read = readNeeded(words, 2, 'yard rename needs the id of a drive and its new name.');
  if (!read.ok) return read;
  const [typed = '', newName = ''] = read.value.bare;
  const found = findItem(library, 'drive', typed);
  if (!found.ok) return found;
  const one = refuseTwoVersions(found.value);
  if (!one.ok) return one;
  const name = plainLine(newName);
  if (name === '' || [...name].length > NAME_MOST)
    return fail('usage', `A drive's name has 1 to ${NAME_MOST} characters, at least one that can be seen.`);
  const { id, heads, versions } = found.value;
  const body = versions[0]?.body;
  if (!body)
    return fail(
      'library.none',
      `There is no drive ${id} any more. See 'lanegauge yard list' for what there is.`,
    );
  const put = await library.put({ kind: 'drive', id, body: { ...body, name }, over: heads });
  if (!put.ok) return put;
  return ok({
    text: read.value.flag('json')
      ? jsonText({ renamed: { id, name } })
      : `${quote(driveName(body))} is called ${quote(name)} now.\n${sayAlike(library, [id])}`,
  });
};

/** `yard restore ID`: brings back what lies in the bin. */
export const yardRestore: YardCommand = async (words, _terminal, library) => {
  const read = readNeeded(
    words,
    1,
    "yard restore needs an id; 'lanegauge yard list' names what lies in the bin.",
  );
  if (!read.ok) return read;
  const id = (read.value.bare[0] ?? '').toLowerCase();
  const back = await library.restore(id);
  if (!back.ok) return back;
  return ok({ text: read.value.flag('json') ? jsonText({ restored: id }) : `${id} is back.\n` });
};

/** `yard choose ID VERSION`: of a thing changed on two computers at once keeps one version. */
export const yardChoose: YardCommand = async (words, _terminal, library) => {
  const read = readNeeded(words, 2, 'yard choose needs an id and one of its versions.');
  if (!read.ok) return read;
  const [id = '', version = ''] = read.value.bare.map((word) => word.toLowerCase());
  const chosen = await library.choose(id, version);
  if (!chosen.ok) return chosen;
  return ok({
    text: read.value.flag('json')
      ? jsonText({ chosen: { id, version } })
      : `${id} is version ${version} now; the other stays in the library's history.\n`,
  });
};

function readNeeded(words: readonly string[], count: number, need: string): Result<WordsRead> {
  const read = readWords(words, { once: [], flags: ['json'], bare: count });
  if (!read.ok) return read;
  return read.value.bare.length < count ? fail('usage', `${need} ${USAGE_HINT}`) : read;
}
