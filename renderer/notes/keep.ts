import type { NoteFields } from '../../geo/notes/note.ts';
import type { ValueOf } from '../../main/contract/calls.ts';
import type { KeptNote } from '../../main/contract/note-calls.ts';
import type { Reply } from '../../main/contract/reply.ts';
import { ask } from '../host/ask.ts';
import { downloadFile } from '../host/download.ts';
import { keptNotes, notesChanged } from '../state/notes.ts';

/** What there is to say of a change, or why it was not kept. */
export type NoteKept = { readonly say: readonly string[] } | { readonly problem: string };

export async function keepNote(
  of: Pick<KeptNote, 'id' | 'heads'> | undefined,
  fields: NoteFields,
): Promise<NoteKept> {
  return take(await ask('saveNote', { fields, ...(of && { id: of.id, over: [...of.heads] }) }));
}

export async function removeNote({ id, heads }: Pick<KeptNote, 'id' | 'heads'>): Promise<NoteKept> {
  return take(await ask('removeNote', { id, over: [...heads] }));
}

/** Takes in the notes of a file. */
export async function openNotes(file: File): Promise<NoteKept> {
  return take(await ask('importNotes', { name: file.name.slice(0, 300), text: await file.text() }));
}

function take(reply: Reply<ValueOf<'notes'>>): NoteKept {
  if (!reply.ok) return { problem: reply.error.message };
  keptNotes.value = reply.value.notes;
  notesChanged.value++;
  return { say: reply.value.say };
}

const FILES = {
  geojson: { name: 'local-notes.geojson', type: 'application/geo+json' },
  'for mappers': { name: 'for-the-map.csv', type: 'text/csv' },
} as const;

/** Gives the notes as a file. @returns why that could not be done */
export async function saveNotesAs(as: keyof typeof FILES): Promise<string | undefined> {
  const reply = await ask('exportNotes', { as });
  if (!reply.ok) return reply.error.message;
  const { name, type } = FILES[as];
  downloadFile(new File([reply.value.text], name, { type }));
  return undefined;
}
