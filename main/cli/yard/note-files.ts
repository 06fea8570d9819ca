import { basename, dirname } from 'node:path';
import { forMappers, mappersCsv } from '../../../geo/notes/for-mappers.ts';
import { notesGeoJson } from '../../../geo/notes/geojson.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { countedInWords, quote } from '../../../geo/units/text.ts';
import { NOTES_MAX_BYTES } from '../../contract/limits.ts';
import { readBytes } from '../../services/files/read-bytes.ts';
import { writeNew } from '../../services/files/write-new.ts';
import { notesOf } from '../../services/library/local-notes.ts';
import { takeNotes } from '../../services/library/take-notes.ts';
import { openMap } from '../../services/map/open-map.ts';
import { readOnShelf } from '../../services/shelf/roads-on-shelf.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT, type WordsRead } from '../read-words.ts';
import type { Terminal } from '../terminal.ts';
import type { YardCommand } from './command.ts';

/** `yard note export FILE`: all notes as GeoJSON, for another firm. */
export const noteExport: YardCommand = async (words, terminal, library) => {
  const read = readOneFile(words, 'yard note export needs the file to write, such as notes.geojson.');
  if (!read.ok) return read;
  const notes = notesOf(library);
  const text = `${JSON.stringify(notesGeoJson(notes), null, 2)}\n`;
  return write(read.value, text, notes.length, terminal);
};

/** `yard note for-mappers FILE`: what the firm measured and the map lacks or has otherwise, as a table. */
export const noteForMappers: YardCommand = async (words, terminal, library) => {
  const read = readOneFile(words, 'yard note for-mappers needs the file to write, such as for-the-map.csv.', [
    'map',
  ]);
  if (!read.ok) return read;
  const notes = notesOf(library);
  const paths = read.value.all('map').map((path) => pathFrom(terminal.folder, path));
  const roads = paths.length > 0 ? await openMap(paths, undefined) : await roadsOfShelf(notes, terminal);
  if (!roads.ok) return roads;
  const list = forMappers(notes, roads.value);
  return write(read.value, mappersCsv(list), list.length, terminal);
};

function roadsOfShelf(notes: ReturnType<typeof notesOf>, { dataFolder, signal }: Terminal) {
  const segments = notes.map(({ at: { lat, lon } }) => ({
    lat: Float64Array.of(lat, lat),
    lon: Float64Array.of(lon, lon),
  }));
  return readOnShelf(shelfFolder(dataFolder), signal, async (each) =>
    ok(await each({ segments }, undefined)),
  );
}

/** `yard note import FILE`: another firm's notes, or our own come back. */
export const noteImport: YardCommand = async (words, terminal, library) => {
  const read = readOneFile(words, 'yard note import needs the GeoJSON file to read.');
  if (!read.ok) return read;
  const path = pathFrom(terminal.folder, read.value.bare[0] ?? '');
  const bytes = await readBytes(path, 'notes', NOTES_MAX_BYTES);
  if (!bytes.ok) return bytes;
  const taken = await takeNotes(library, new TextDecoder().decode(bytes.value), basename(path));
  if (!taken.ok) return taken;
  return ok({
    text: read.value.flag('json') ? jsonText({ say: taken.value }) : `${taken.value.join('\n')}\n`,
  });
};

function readOneFile(
  words: readonly string[],
  need: string,
  several: readonly string[] = [],
): Result<WordsRead> {
  const read = readWords(words, { once: [], several, flags: ['json'], bare: 1 });
  if (!read.ok) return read;
  return read.value.bare.length < 1 ? fail('usage', `${need} ${USAGE_HINT}`) : read;
}

/** @param count how many notes or figures stand in it */
async function write(read: WordsRead, text: string, count: number, { folder, signal }: Terminal) {
  const path = pathFrom(folder, read.bare[0] ?? '');
  const written = await writeNew(dirname(path), { [basename(path)]: text }, signal);
  if (!written.ok) return written;
  return ok({
    text: read.flag('json')
      ? jsonText({ file: path, count })
      : `${quote(basename(path))}: ${countedInWords(count, 'note')} written.\n`,
  });
}
