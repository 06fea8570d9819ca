import { notesGeoJson } from '../../geo/notes/geojson.ts';
import type { NoteFields } from '../../geo/notes/note.ts';
import { sayUnplaced } from '../../geo/notes/say-unplaced.ts';
import { ok } from '../../geo/result.ts';
import type { KeptNote } from '../contract/note-calls.ts';
import type { Services } from '../dispatch.ts';
import type { Engine } from './engine/engine.ts';
import type { Library } from './library/library.ts';
import { notesOf } from './library/local-notes.ts';
import { knownFields, newNoteId, takeNotes } from './library/take-notes.ts';

interface NoteParts {
  readonly engine: Engine;
  readonly stores: { readonly library: Library };
}

type NoteServices = Pick<Services, 'notes' | 'saveNote' | 'removeNote' | 'importNotes' | 'exportNotes'>;

/** The calls about local notes, kept in the library. */
export function noteCalls({ engine, stores: { library } }: NoteParts): NoteServices {
  const kept = (say: readonly string[] = []) => ok({ notes: keptNotes(library), say: [...say] });
  return {
    async notes() {
      await library.refresh('note');
      return kept();
    },
    async saveNote({ id = newNoteId(), over, fields }, hooks) {
      const placed = await onItsRoad(fields, engine, hooks);
      const put = await library.put({ kind: 'note', id, body: placed.fields, ...(over && { over }) });
      return put.ok ? kept(placed.say) : put;
    },
    async removeNote({ id, over }) {
      const removed = await library.remove({ kind: 'note', id, heads: over });
      return removed.ok ? kept() : removed;
    },
    async importNotes({ name, text }) {
      const taken = await takeNotes(library, text, name);
      return taken.ok ? kept(taken.value) : taken;
    },
    async exportNotes({ as }, hooks) {
      const localNotes = notesOf(library);
      if (as === 'geojson') return ok({ text: `${JSON.stringify(notesGeoJson(localNotes), null, 2)}\n` });
      return engine.ask('notesForMappers', { localNotes }, hooks);
    },
  };
}

function keptNotes(library: Library): KeptNote[] {
  return library.list('note').flatMap(({ id, heads, versions }) => {
    const [fields, ...others] = versions.map(({ body }) => knownFields(body));
    return fields === undefined ? [] : [{ id, heads: [...heads], fields, others }];
  });
}

async function onItsRoad(
  fields: NoteFields,
  engine: Engine,
  hooks: Parameters<Engine['ask']>[2],
): Promise<{ readonly fields: NoteFields; readonly say: readonly string[] }> {
  if (fields.osm !== undefined || fields.road !== undefined) return { fields, say: [] };
  const found = await engine.ask('roadAt', { at: fields.at }, hooks);
  // off any road, or no map open: it is kept as it is
  if (!found.ok) return { fields, say: [sayUnplaced('no-map')] };
  const isOn = found.value.osm !== undefined;
  return { fields: { ...fields, ...found.value }, say: isOn ? [] : [sayUnplaced('no-road')] };
}
