import { given } from '../../../geo/given.ts';
import { importPart } from './import/import-part.ts';
import type { ImportPart } from './put-on-shelf.ts';

/** Takes one file in, and tells in words what is being done. */
export const importWithWords: ImportPart = (source, outFile, tempFolder, { signal, onProgress }) =>
  importPart(source, outFile, tempFolder, {
    signal,
    onProgress: ({ share, secondsLeft }) =>
      onProgress({ what: `Taking in ${source.name}`, share, ...given({ secondsLeft }) }),
  });
