import { z } from 'zod';
import { noteFieldsSchema } from '../../geo/notes/note.ts';
import { NOTES_MAX_BYTES } from './limits.ts';
import { workSchema } from './work.ts';

const noteId = z.string().min(1).max(200);
const heads = z.array(z.string().max(200)).max(1000);

/** A local note as it is kept. */
const keptNoteSchema = z.strictObject({
  id: noteId,
  /** the versions it has; a change is made over these */
  heads,
  fields: noteFieldsSchema,
  /** what it says besides where it was changed in two places at once, until it is kept anew */
  others: z.array(noteFieldsSchema),
});
export type KeptNote = z.infer<typeof keptNoteSchema>;

const keptSchema = z.strictObject({ notes: z.array(keptNoteSchema), say: z.array(z.string()) });

/** The calls about local notes. Each answers with the notes as they are kept then. */
export const NOTE_CALLS = {
  /** Looks again at what is kept: another computer may have noted something. */
  notes: { request: z.strictObject({}), progress: z.never(), value: keptSchema },
  /** Keeps a note, new without `id`; one made without a road is put on the nearest of the open map. */
  saveNote: {
    request: z.strictObject({
      id: noteId.optional(),
      over: heads.optional(),
      fields: noteFieldsSchema,
    }),
    progress: workSchema,
    value: keptSchema,
  },
  /** Puts a note in the bin. */
  removeNote: {
    request: z.strictObject({ id: noteId, over: heads }),
    progress: z.never(),
    value: keptSchema,
  },
  /** Takes in notes from GeoJSON; those that are known already stay as they are. */
  importNotes: {
    request: z.strictObject({ name: z.string().max(300), text: z.string().max(NOTES_MAX_BYTES) }),
    progress: z.never(),
    value: keptSchema,
  },
  /** The notes as a file: GeoJSON for another firm, or a table of what the open map lacks for whoever maps. */
  exportNotes: {
    request: z.strictObject({ as: z.enum(['geojson', 'for mappers']) }),
    progress: workSchema,
    value: z.strictObject({ text: z.string() }),
  },
} as const;
