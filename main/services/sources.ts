import { given } from '../../geo/given.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { FileUse, OwnMap, Source } from '../contract/source.ts';
import type { NamedFile } from './engine/protocol.ts';
import type { Library } from './library/library.ts';
import type { Recents } from './recents/recents-store.ts';
import type { SampleFiles } from './samples.ts';
import type { HeldFile, Uploads } from './uploads/uploads.ts';

/** Turns what the page names into a file of this computer. */
export interface Sources {
  find(source: Source): Result<NamedFile>;
  /**
   * Puts a file that opened well first among the recent ones.
   * @param map of a drive: the map it was opened on
   * @returns where it will be found when the program runs again; undefined where it is not remembered
   */
  remember(source: Source, use: FileUse, map?: OwnMap): Promise<Source | undefined>;
}

/** One place that finds a file wherever it comes from: the sample, the library, the recent files, what was handed over. */
export function createSources(
  samples: SampleFiles,
  uploads: Uploads,
  { recents, library }: { readonly recents: Recents; readonly library: Library },
): Sources {
  function look(source: Source): (NamedFile & Partial<HeldFile>) | undefined {
    switch (source.kind) {
      case 'sample':
        return samples.find(source.id);
      case 'recent':
        return recents.find(source.id);
      case 'library':
        return inLibrary(library, source.id);
      case 'shelf':
        return undefined;
      default:
        return uploads.find(source.kind, source.token);
    }
  }
  return {
    find(source) {
      const found = look(source);
      return found
        ? ok({ path: found.path, name: found.name, ...given({ sha256: found.sha256 }) })
        : fail('no-such-file', 'That file is no longer at hand. Open it again.');
    },
    async remember(source, use, map) {
      if (source.kind === 'sample' || source.kind === 'shelf' || source.kind === 'library') return source;
      const found = look(source);
      if (!found) return undefined;
      const id = await recents.add({ passing: false, bytes: 0, ...found, use, ...given({ map }) });
      return id === undefined ? undefined : { kind: 'recent', id };
    },
  };
}

function inLibrary(library: Library, id: string): NamedFile | undefined {
  const body = library.find('drive', id)?.versions[0]?.body;
  return body && { path: library.pathOf('gpx', body.gpx), name: body.file, sha256: body.gpx };
}
