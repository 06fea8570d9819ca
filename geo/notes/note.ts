import { z } from 'zod';
import { BELIEVED } from '../units/believed.ts';

/** Longest text and initials of a note, in characters. */
export const SAY_MOST = 500;
export const BY_MOST = 6;

function characters(text: string): number {
  return [...text].length;
}

const day = z.iso.date();
const name = z.string().max(200).optional();

/**
 * What a note says, without its name: the firm's own knowledge of one place. A figure is a clearance as measured there
 * (a mass as read off the sign), held within 25 m either way on that road.
 */
export const noteFieldsSchema = z.strictObject({
  /** degrees WGS 84 */
  at: z.strictObject({ lat: z.number().min(-90).max(90), lon: z.number().min(-180).max(180) }),
  /** what it is about on the map, where that was known: the driven way, or the point on it */
  osm: z.strictObject({ type: z.enum(['way', 'node']), id: z.int().positive() }).optional(),
  /** the road it was made on, as mapped then: finds it again when its OSM id is gone */
  road: z.strictObject({ name, ref: name, class: name }).optional(),
  /** the firm's words */
  say: z
    .string()
    .refine((text) => text.trim() !== '', { error: 'is empty' })
    .refine((text) => characters(text) <= SAY_MOST, { error: `is longer than ${SAY_MOST} characters` }),
  heightM: z.number().min(BELIEVED.height.least).max(BELIEVED.height.most).optional(),
  widthM: z.number().min(BELIEVED.width.least).max(BELIEVED.width.most).optional(),
  massKg: z.number().min(BELIEVED.mass.least).max(BELIEVED.mass.most).optional(),
  /** the finding it answers, by its id in the report it was made from */
  answers: z.string().max(2000).optional(),
  /** the day it was seen or measured, and the last day on which it holds: 2027-06-12 */
  seen: day.optional(),
  until: day.optional(),
  /** initials of who saw it */
  by: z
    .string()
    .refine((text) => text.trim() !== '', { error: 'is empty' })
    .refine((text) => characters(text) <= BY_MOST, { error: `is longer than ${BY_MOST} characters` })
    .optional(),
  /** holds only for who drives there in about this direction, degrees clockwise from north; else for both */
  headingDeg: z.number().min(0).lt(360).optional(),
});
export type NoteFields = z.infer<typeof noteFieldsSchema>;

/** A local note. Its id is that of the record which keeps it. */
export interface LocalNote extends NoteFields {
  readonly id: string;
}
