import { randomBytes } from 'node:crypto';
import { readNotesGeoJson } from '../../../geo/notes/geojson.ts';
import { type NoteFields, noteFieldsSchema } from '../../../geo/notes/note.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { capital, countedInWords } from '../../../geo/units/text.ts';
import type { Library } from './library.ts';
import { notesOf } from './local-notes.ts';

/** As the firm's other ids are: what it is of, and eight hexadecimal digits. */
export function newNoteId(): string {
  return `note-${randomBytes(4).toString('hex')}`;
}

/** What a later program may have added is for that one to show. */
export function knownFields(body: NoteFields): NoteFields {
  const names = Object.keys(noteFieldsSchema.shape);
  const fields = Object.fromEntries(Object.entries(body).filter(([name]) => names.includes(name)));
  return noteFieldsSchema.parse(fields);
}

/** Notes of another firm, or our own come back. @returns what there is to say of them */
export async function takeNotes(library: Library, text: string, name: string): Promise<Result<string[]>> {
  const read = readNotesGeoJson(text, name);
  if (!read.ok) return read;
  let [added, there, binned] = [0, 0, 0];
  const inBin = await notesInBin(library);
  for (const { id = newNoteId(), fields } of read.value.notes) {
    if (library.list('note').some((item) => item.id === id) || isKept(library, fields)) {
      there++;
      continue;
    }
    // what somebody took away, a permission perhaps, does not come back by itself
    if (inBin.ids.has(id) || inBin.texts.has(textOf(fields))) {
      binned++;
      continue;
    }
    const put = await library.put({ kind: 'note', id: usableId(library, id), body: fields });
    if (!put.ok) return put;
    added++;
  }
  const say = [capital(`${countedInWords(added, 'note')} taken in.`)];
  if (there > 0)
    say.push(capital(`${countedInWords(there, 'note')} ${there === 1 ? 'was' : 'were'} here already.`));
  if (binned > 0)
    say.push(
      `${capital(countedInWords(binned, 'note'))} ${binned === 1 ? 'lies' : 'lie'} in the bin here and ${binned === 1 ? 'stays' : 'stay'} there: lanegauge yard restore, or Restore in the window, brings one back.`,
    );
  return ok([...say, ...read.value.left]);
}

/** The notes that were taken away here: their ids, and what those said of which that is still kept. */
async function notesInBin(
  library: Library,
): Promise<{ ids: ReadonlySet<string>; texts: ReadonlySet<string> }> {
  const items = library.bin('note');
  const texts = new Set<string>();
  for (const item of items) {
    const [body] = await library.before(item);
    const fields = noteFieldsSchema.safeParse(body);
    if (fields.success) texts.add(textOf(fields.data));
  }
  return { ids: new Set(items.map(({ id }) => id)), texts };
}

function textOf(fields: NoteFields): string {
  return JSON.stringify(noteFieldsSchema.parse(fields));
}

function isKept(library: Library, fields: NoteFields): boolean {
  const text = textOf(fields);
  return notesOf(library).some(({ id: _, ...other }) => JSON.stringify(knownFields(other)) === text);
}

function usableId(library: Library, id: string): string {
  return /^note-[0-9a-f]{8}$/.test(id) && library.find('note', id) === undefined ? id : newNoteId();
}
