import { isAbsolute, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const OPENED_BY_NAME = /\.(gpx|pbf|osm|osm\.gz|json)$/i;
/** A hundred files dropped on the icon are a slip of the hand. */
const FILES_MAX = 8;

/**
 * The files named on a command line.
 * @param argv as the process was given it
 * @param isPackaged a program run from its folder has that folder as its first word
 * @param folder where relative names start
 */
export function namedFiles(
  argv: readonly string[],
  { isPackaged, folder }: { readonly isPackaged: boolean; readonly folder: string },
): string[] {
  return asPaths(argv.slice(isPackaged ? 1 : 2), folder);
}

/** The files another start of the program hands over; whatever else comes is ignored. */
export function handedFiles(data: unknown): string[] {
  if (typeof data !== 'object' || data === null || !('files' in data) || !Array.isArray(data.files))
    return [];
  const words: unknown[] = data.files;
  return asPaths(
    words.filter((word) => typeof word === 'string'),
    undefined,
  );
}

function asPaths(words: readonly string[], folder: string | undefined): string[] {
  return words
    .filter((word) => !word.startsWith('-'))
    .flatMap((word) => pathOf(word, folder))
    .filter((path) => OPENED_BY_NAME.test(path))
    .slice(0, FILES_MAX);
}

function pathOf(word: string, folder: string | undefined): string[] {
  if (word.length > 4096 || word.includes('\0')) return [];
  // Linux desktops name files by address
  if (word.startsWith('file:')) {
    try {
      return [fileURLToPath(word)];
    } catch {
      return [];
    }
  }
  if (isAbsolute(word)) return [word];
  return folder === undefined ? [] : [resolve(folder, word)];
}
