import { basename } from 'node:path';
import { given } from '../../../geo/given.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import { fail, ok } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import { readBytes } from '../../services/files/read-bytes.ts';
import { type AddedDrive, addDrives } from '../../services/library/add-drives.ts';
import { sayAlike } from '../../services/library/alike.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';

/** As many as a shell hands over. */
const FILES_MOST = 100_000;

/** `yard add DRIVE.gpx…`: puts drives into the library; the good ones, where some are not. */
export const yardAdd: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'], bare: FILES_MOST });
  if (!read.ok) return read;
  const { bare, flag } = read.value;
  if (bare.length === 0) return fail('usage', `yard add needs a drive: a GPX file. ${USAGE_HINT}`);
  const added: AddedDrive[] = [];
  const refused: string[] = [];
  for (const [i, path] of bare.entries()) {
    if (terminal.signal.aborted) break;
    terminal.progress.show(`Adding drives, ${i + 1} of ${bare.length}`);
    const bytes = await readBytes(pathFrom(terminal.folder, path), 'drive', GPX_MAX_BYTES);
    const done = bytes.ok ? await addDrives(library, { bytes: bytes.value, name: basename(path) }) : bytes;
    if (done.ok) for (const each of done.value) added.push(each);
    else refused.push(done.error.message);
  }
  terminal.progress.clear();
  const drives = added.map(toldDrive);
  const fresh = drives.filter(({ was }) => was !== 'there').map(({ id }) => id);
  const text = flag('json')
    ? jsonText({ drives })
    : `${drives.map(printAdded).join('')}${sayAlike(library, fresh)}`;
  // where nothing was added there is nothing to print
  return ok({ text: drives.length === 0 ? '' : text, refused });
};

function toldDrive({ item, was }: AddedDrive) {
  const [version] = item.versions;
  const body = version?.body;
  return { id: item.id, name: body ? driveName(body) : item.id, was, ...given({ day: body?.day }) };
}

const WAS = {
  new: 'added',
  there: 'in the library already, so it stands there once',
  back: 'back from the bin',
};

function printAdded({ id, name, was, day }: ReturnType<typeof toldDrive>): string {
  const which = day ? `, day ${day.number} of ${day.of}` : '';
  return `${quote(name)}${which}: ${WAS[was]} (${id})\n`;
}
