import { z } from 'zod';
import { noteFieldsSchema } from '../../notes/note.ts';

/** A local note as it is kept: what it says, and whatever a later program adds. */
export const noteBodySchema = z.looseObject(noteFieldsSchema.shape);
