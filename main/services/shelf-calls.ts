import { given } from '../../geo/given.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { ShelfShown } from '../contract/shelf.ts';
import type { Services } from '../dispatch.ts';
import type { Engine } from './engine/engine.ts';
import { underItsName } from './engine/true-names.ts';
import { codeOf } from './files/system-error.ts';
import { notesOf } from './library/local-notes.ts';
import type { ImportPart } from './shelf/put-on-shelf.ts';
import { shelfUnreadable } from './shelf/shelf-unreadable.ts';
import { findByName, importMap, nameOfFile, removeByName, verifyMaps } from './shelf/shelf-work.ts';
import { showMaps } from './shelf/show-maps.ts';
import type { Sources } from './sources.ts';
import type { Stores } from './stores.ts';

interface Parts {
  readonly shelf: string;
  readonly importPart: ImportPart;
  readonly sources: Sources;
  readonly engine: Engine;
  readonly stores: Pick<Stores, 'recents' | 'settings' | 'library'>;
  now(): Date;
}

/** Drives compared after a map was replaced: those opened last. */
const COMPARED_MAX = 20;

/** The window's calls about the shelf. */
export function shelfCalls(
  parts: Parts,
): Pick<Services, 'shelf' | 'importMap' | 'verifyMap' | 'removeMap' | 'mapChanges'> {
  const { shelf, sources, engine, stores } = parts;
  return {
    shelf: () => showShelf(shelf),
    async importMap({ source, name }, hooks) {
      const found = sources.find(source);
      if (!found.ok) return found;
      const file = found.value;
      // what the page sent lies in a passing folder; what lies on this computer stays there
      const stays = source.kind === 'path' || source.kind === 'recent';
      const elsewhere = nameOfFile(file.name);
      const wanted = name ?? elsewhere;
      // the old map's files stay open, so that it can be compared with the new one
      await engine.ask('holdShelf', { shelf }, hooks);
      const put = await importMap(
        parts,
        { name: wanted, elsewhere, files: [{ ...file, stays }], origin: { by: 'file' } },
        hooks,
      );
      if (!put.ok) return underItsName(put.error, file);
      const shown = await showShelf(shelf);
      const map = shown.ok ? shown.value.maps.find((each) => each.name === put.value.name) : undefined;
      return map === undefined
        ? fail('shelf.gone', 'The map was taken off the shelf meanwhile. Import it again, or use another.')
        : ok({ ...map, ...given({ beside: put.value.beside }) });
    },
    async verifyMap({ name, repair }, hooks) {
      const found = await findByName(shelf, name);
      if (!found.ok) return found;
      const verified = await verifyMaps(parts, [found.value], { repair, note: true }, hooks);
      if (!verified.ok) return verified;
      const [map] = verified.value;
      if (map === undefined)
        return fail(
          'shelf.gone',
          'The map was taken off the shelf meanwhile. Import it again, or use another.',
        );
      const { state, damagedBlocks } = map;
      return ok({ name, state, damagedBlocks, ...(map.repair && { repair: map.repair }) });
    },
    async mapChanges(request, hooks) {
      const { recents, settings } = stores;
      const drives = recents
        .list()
        .filter(({ use }) => use === 'drive')
        .slice(0, COMPARED_MAX)
        .flatMap(({ id, leaveAt }) => {
          const file = recents.find(id);
          return file === undefined ? [] : [{ path: file.path, name: file.name, ...given({ leaveAt }) }];
        });
      const { units } = settings.current();
      const asked = { ...request, drives, units, made: parts.now().toISOString() };
      const localNotes = notesOf(stores.library);
      return engine.ask('compareHeld', { shelf, asked: { ...asked, localNotes } }, hooks);
    },
    async removeMap({ name }) {
      const removed = await removeByName(shelf, name);
      return removed.ok ? showShelf(shelf) : removed;
    },
  };
}

async function showShelf(shelf: string): Promise<Result<ShelfShown>> {
  try {
    const maps = await showMaps(shelf);
    return ok({ folder: shelf, bytes: maps.reduce((sum, map) => sum + map.bytes, 0), maps });
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return shelfUnreadable(shelf, error);
  }
}
