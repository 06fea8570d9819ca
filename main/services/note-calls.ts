import { randomBytes } from 'node:crypto';
import { notesGeoJson, readNotesGeoJson } from '../../geo/notes/geojson.ts';
import { type NoteFields, noteFieldsSchema } from '../../geo/notes/note.ts';
import { ok, type Result } from '../../geo/result.ts';
import { capital, countedInWords } from '../../geo/units/text.ts';
import type { KeptNote } from '../contract/note-calls.ts';
import type { Services } from '../dispatch.ts';
import type { Engine } from './engine/engine.ts';
import type { Library } from './library/library.ts';
import { notesOf } from './library/local-notes.ts';

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
    async saveNote({ id = newId(), over, fields }, hooks) {
      const placed = await onItsRoad(fields, engine, hooks);
      const put = await library.put({ kind: 'note', id, body: placed, ...(over && { over }) });
      return put.ok ? kept() : put;
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

/** As the firm's other ids are: what it is of, and eight hexadecimal digits. */
function newId(): string {
  return `note-${randomBytes(4).toString('hex')}`;
}

function keptNotes(library: Library): KeptNote[] {
  return library.list('note').flatMap(({ id, heads, versions }) => {
    const [fields, ...others] = versions.map(({ body }) => known(body));
    return fields === undefined ? [] : [{ id, heads: [...heads], fields, others }];
  });
}

/** What a later program may have added is for that one to show. */
function known(body: NoteFields): NoteFields {
  const names = Object.keys(noteFieldsSchema.shape);
  const fields = Object.fromEntries(Object.entries(body).filter(([name]) => names.includes(name)));
  return noteFieldsSchema.parse(fields);
}

async function onItsRoad(
  fields: NoteFields,
  engine: Engine,
  hooks: Parameters<Engine['ask']>[2],
): Promise<NoteFields> {
  if (fields.osm !== undefined || fields.road !== undefined) return fields;
  const found = await engine.ask('roadAt', { at: fields.at }, hooks);
  // off any road, or no map open: it is kept as it is
  return found.ok ? { ...fields, ...found.value } : fields;
}

/** Notes of another firm, or our own come back. @returns what there is to say of them */
async function takeNotes(library: Library, text: string, name: string): Promise<Result<string[]>> {
  const read = readNotesGeoJson(text, name);
  if (!read.ok) return read;
  let [added, there] = [0, 0];
  for (const { id = newId(), fields } of read.value.notes) {
    if (library.list('note').some((item) => item.id === id) || isKept(library, fields)) {
      there++;
      continue;
    }
    const put = await library.put({ kind: 'note', id: usableId(library, id), body: fields });
    if (!put.ok) return put;
    added++;
  }
  const say = [capital(`${countedInWords(added, 'note')} taken in.`)];
  if (there > 0)
    say.push(capital(`${countedInWords(there, 'note')} ${there === 1 ? 'was' : 'were'} here already.`));
  return ok([...say, ...read.value.left]);
}

function isKept(library: Library, fields: NoteFields): boolean {
  const text = JSON.stringify(noteFieldsSchema.parse(fields));
  return notesOf(library).some(({ id: _, ...other }) => JSON.stringify(known(other)) === text);
}

function usableId(library: Library, id: string): string {
  return /^note-[0-9a-f]{8}$/.test(id) && library.find('note', id) === undefined ? id : newId();
}
