/**
 * A program that works on a shelf and is ended from outside: `import SHELF NAME FILE`, or `fetch FOLDER SERVER`, where
 * the shelf is the data folder's. Says `begun` before it does anything, and `done` at its end.
 */
import { importWithWords as importPart } from '../../../main/services/shelf/import-with-words.ts';
import { importMap } from '../../../main/services/shelf/shelf-work.ts';
import { shelfFolder } from '../../../main/services/shelf/where-shelf.ts';

const [what, where = '', ...words] = process.argv.slice(2);
const hooks = { signal: new AbortController().signal, onProgress: () => {} };

console.log('begun');
const done = await (what === 'fetch' ? fetchAlong(where, words) : takeIn(where, words));
console.log(done.ok ? 'done' : done.error.message);

function takeIn(shelf: string, [name = '', path = '']: readonly string[]) {
  return importMap(
    { shelf, importPart, now: () => new Date() },
    { name, files: [{ path, name: path, stays: true }], origin: { by: 'file' } },
    hooks,
  );
}

/** What it needs is loaded when it is asked for: an import starts the sooner. */
async function fetchAlong(dataFolder: string, [server = '']: readonly string[]) {
  const { createFetcher } = await import('../../../main/services/fetched/fetcher.ts');
  const { fastPace } = await import('../map-server/fast-pace.ts');
  const { LONG, straightMap } = await import('../map-server/straight-map.ts');
  const pace = fastPace();
  const fetcher = createFetcher({
    shelf: shelfFolder(dataFolder),
    importPart,
    now: pace.now,
    dataFolder,
    pace,
  });
  return fetcher.take({ name: 'Drive', route: straightMap(LONG).route }, { by: 'line', server }, hooks);
}
