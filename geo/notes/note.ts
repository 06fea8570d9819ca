import { z } from 'zod';
import { ALL_KINDS, SUBJECTS } from '../report/kinds.ts';
import { BY_MOST, NOTE_FIGURES, SAY_MOST } from './bounds.ts';

function text(most: number) {
  return z
    .string()
    .refine((said) => said.trim() !== '', { error: 'is empty' })
    .refine((said) => [...said].length <= most, { error: `is longer than ${most} characters` });
}

const day = z.iso.date();
const name = z.string().max(200).optional();
const figure = (least: number, most: number) => z.number().min(least).max(most);
const measured = (of: keyof typeof NOTE_FIGURES) =>
  figure(NOTE_FIGURES[of].least, NOTE_FIGURES[of].most).optional();

/**
 * What a note says, without its name: the firm's own knowledge of one place. A figure is a clearance as measured there
 * (a mass as read off the sign), held within 25 m either way on that road.
 */
export const noteFieldsSchema = z.strictObject({
  /** degrees WGS 84 */
  at: z.strictObject({ lat: figure(-90, 90), lon: figure(-180, 180) }),
  /** what it is about on the map, where that was known: the driven way, or the point on it */
  osm: z.strictObject({ type: z.enum(['node', 'way', 'relation']), id: z.int().positive() }).optional(),
  /** the road it was made on, as mapped then: finds it again when its OSM id is gone */
  road: z.strictObject({ name, ref: name, class: name }).optional(),
  /** the firm's words */
  say: text(SAY_MOST),
  heightM: measured('heightM'),
  widthM: measured('widthM'),
  massKg: measured('massKg'),
  /** the finding it answers: its id in the report it was made from, and what it is about */
  answers: z
    .strictObject({
      finding: z.string().min(1).max(2000),
      subject: z.enum(SUBJECTS).optional(),
      kind: z.enum(ALL_KINDS).optional(),
    })
    .optional(),
  /** the firm has leave of whoever may give it to drive there: settles the finding it answers where that asks for leave */
  leave: z.literal(true).optional(),
  /** the day it was seen or measured, and the last day on which it holds: 2027-06-12 */
  seen: day.optional(),
  until: day.optional(),
  /** initials of who saw it */
  by: text(BY_MOST).optional(),
  /** holds only for who drives there in about this direction, degrees clockwise from north; else for both */
  headingDeg: figure(0, 360).optional(),
});
export type NoteFields = z.infer<typeof noteFieldsSchema>;

/** A local note. Its id is that of the record which keeps it. */
export interface LocalNote extends NoteFields {
  readonly id: string;
}
