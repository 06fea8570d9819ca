import { given } from '../../../geo/given.ts';
import { importApart, wantsApart } from './apart/import-apart.ts';
import { type ImportHooks, importPart } from './import/import-part.ts';
import type { ImportPart } from './put-on-shelf.ts';

/** Takes one file in, a large one in a program of its own, and tells in words what is being done. */
export const importWithWords: ImportPart = async (source, outFile, tempFolder, { signal, onProgress }) => {
  const hooks: ImportHooks = {
    signal,
    onProgress: ({ share, secondsLeft }) =>
      onProgress({ what: `Taking in ${source.name}`, share, ...given({ secondsLeft }) }),
  };
  const apart = (await wantsApart(source.path))
    ? await importApart({ source, outFile, tempFolder }, hooks)
    : undefined;
  return apart ?? importPart(source, outFile, tempFolder, hooks);
};
