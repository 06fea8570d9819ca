import { basename } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { type ListedMap, listMaps } from '../../services/shelf/list-maps.ts';
import type { MapFile } from '../../services/shelf/put-on-shelf.ts';
import { type ImportedMap, importMap, nameOfFile } from '../../services/shelf/shelf-work.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { ShelfCommand } from './command.ts';
import { type Imported, printImported } from './print-maps.ts';

const MANY = 1000;

/** `shelf import FILE… [--name N]`: each file a map of its own name, beside one of that name
 * elsewhere, or all of them one map of the name given. */
export const shelfImport: ShelfCommand = async (words, { folder, progress, signal }, tools) => {
  const read = readWords(words, { once: ['name'], flags: ['json'], bare: MANY });
  if (!read.ok) return read;
  const { bare, one, flag } = read.value;
  if (bare.length === 0) return fail('usage', `shelf import needs the file of a map. ${USAGE_HINT}`);
  const name = one('name');
  if (name?.trim() === '') return fail('usage', `--name needs a name that can be read. ${USAGE_HINT}`);
  const files = bare.map((typed): MapFile => {
    const path = pathFrom(folder, typed);
    return { path, name: basename(path), stays: true };
  });
  const wanted =
    name === undefined
      ? files.map((file) => {
          const own = nameOfFile(file.path);
          return { name: own, elsewhere: own, files: [file] };
        })
      : [{ name, files }];
  const before = await listMaps(tools.shelf);
  const done: Imported[] = [];
  const failed: string[] = [];
  for (const map of wanted) {
    const put: Result<ImportedMap> = await importMap(
      tools,
      { ...map, origin: { by: 'file' } },
      { signal, onProgress: ({ what, share }) => progress.show(what, share) },
    );
    if (signal.aborted) break;
    if (put.ok)
      done.push({
        ...put.value,
        ...given({ replaced: before.find((map) => map.name === put.value.name && !isSame(map, put.value)) }),
      });
    else failed.push(put.error.message);
  }
  progress.clear();
  const [first] = failed;
  if (first !== undefined)
    return fail(
      'shelf.import',
      done.length === 0 ? failed.join(' ') : `${failed.join(' ')} What was named besides is on the shelf.`,
    );
  return ok({
    text: flag('json') ? jsonText({ maps: done.map(({ replaced: _, ...map }) => map) }) : printImported(done),
    exit: 0,
  });
};

/** Of the same files: nothing that was checked on it has changed. */
function isSame(a: ListedMap, b: ListedMap): boolean {
  return a.dataDate === b.dataDate && a.roads === b.roads && isDeepStrictEqual(a.sources, b.sources);
}
