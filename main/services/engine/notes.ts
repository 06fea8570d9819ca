import { forMappers, mappersCsv } from '../../../geo/notes/for-mappers.ts';
import { roadAt } from '../../../geo/notes/place-note.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { DrawnRoute } from '../../../geo/roads/discs.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { roadsFromShelf } from '../shelf/roads-from-shelf.ts';
import type { EngineHandlers, WorkHooks } from './protocol.ts';
import type { EngineState } from './state.ts';

const NO_MAP = fail('no-map', 'No map is open. Open a map first.');

/** What of local notes the open map has to answer. */
export function noteHandlers(state: EngineState): Pick<EngineHandlers, 'roadAt' | 'notesForMappers'> {
  return {
    async roadAt({ at }, hooks) {
      const roads = await roadsAbout(state, [at], hooks);
      return roads.ok ? ok(roadAt(at, roads.value) ?? {}) : roads;
    },
    async notesForMappers({ localNotes }, hooks) {
      hooks.onProgress({ what: 'Comparing the notes with the map' });
      const roads = await roadsAbout(
        state,
        localNotes.map(({ at }) => at),
        hooks,
      );
      return roads.ok ? ok({ text: mappersCsv(forMappers(localNotes, roads.value)) }) : roads;
    },
  };
}

/** All roads of an open file; of the shelf those about the places. */
async function roadsAbout(
  { map, shelf }: EngineState,
  places: readonly { readonly lat: number; readonly lon: number }[],
  { lookUp }: WorkHooks,
): Promise<Result<Roads>> {
  if (!map) return NO_MAP;
  if (shelf === undefined) return ok(map);
  const segments = places.map(({ lat, lon }) => ({
    lat: Float64Array.of(lat, lat),
    lon: Float64Array.of(lon, lon),
  }));
  const about: DrawnRoute = { segments };
  return ok((await roadsFromShelf(shelf, about, async () => lookUp())).roads);
}
