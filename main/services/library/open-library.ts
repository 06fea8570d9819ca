import { join } from 'node:path';
import { isDeleted } from '../../../geo/library/bin.ts';
import { isOfKind } from '../../../geo/library/item.ts';
import { sweepPassing } from '../files/passing-files.ts';
import { changesOf } from './change-library.ts';
import { keptBytes } from './kept-bytes.ts';
import type { Library } from './library.ts';
import { sweepBin } from './sweep-bin.ts';
import { watchRecords } from './watched-records.ts';

export interface LibraryOptions {
  /** where the library lies */
  readonly folder: string;
  /** where this computer keeps its index */
  readonly dataFolder: string;
  now(): Date;
  /** for so long a disk is waited for; then what was last seen is shown, and the rest comes later */
  readonly waitMs?: number;
}

/** Opens a library; a folder that is not there yet is made by the first change. */
export async function openLibrary(options: LibraryOptions): Promise<Library> {
  const { folder, now } = options;
  const records = join(folder, 'records');
  const passing = join(folder, 'passing');
  const watched = await watchRecords({ ...options, records });
  void sweepPassing(passing, now().getTime());
  return {
    folder,
    list: (kind) =>
      watched
        .items(kind)
        .filter((item) => isOfKind(item, kind))
        .filter((item) => !isDeleted(item)),
    bin: (kind) => watched.items(kind).filter(isDeleted),
    find(kind, id) {
      const item = watched.item(id);
      return item && isOfKind(item, kind) ? item : undefined;
    },
    refresh: watched.refresh,
    before: async (item) => (await watched.before(item)).map(({ body }) => body),
    ...changesOf({ folder, records, passing, watched, now }),
    sweep: () => sweepBin({ folder, records, watched }, now().getTime()),
    ...keptBytes(folder, passing),
    notices: watched.notices,
  };
}
