import { z } from 'zod';
import { KINDS, SUBJECTS } from '../../report/kinds.ts';

const day = z.string().regex(/^\d{4}-\d\d-\d\d$/);
const figure = (least: number, most: number) => z.number().min(least).max(most);

/** The longest that a note may say, characters. */
export const NOTE_SAYS_LONGEST = 500;

/**
 * What the firm knows of a place and the map does not. Its figures are measured clearances, metres and kilograms;
 * it holds on its road near its place, both directions unless it names one.
 */
export const noteBodySchema = z.looseObject({
  /** degrees, WGS 84 */
  at: z.strictObject({ lat: figure(-90, 90), lon: figure(-180, 180) }),
  /** what it stands on, where known */
  osm: z.strictObject({ type: z.enum(['node', 'way', 'relation']), id: z.int().min(1) }).optional(),
  /** the road it stands on as the map called it then, to find it again on a newer map */
  road: z.looseObject({ name: z.string().optional(), ref: z.string().optional() }).optional(),
  /** of what passes: the bearing it drives there, degrees clockwise from north; without it both directions */
  headingDeg: figure(0, 360).optional(),
  say: z.string().max(NOTE_SAYS_LONGEST).regex(/\S/),
  heightM: figure(0.5, 20).optional(),
  widthM: figure(0.5, 50).optional(),
  massKg: figure(100, 200_000).optional(),
  /** the finding it settles: its id when the note was made, and what it was about */
  answers: z
    .looseObject({
      finding: z.string().min(1).max(500),
      subject: z.enum(SUBJECTS).optional(),
      kind: z.enum(Object.values(KINDS).flat()).optional(),
    })
    .optional(),
  /** the day it was seen */
  seen: day.optional(),
  /** the last day it holds */
  until: day.optional(),
  /** initials */
  by: z.string().min(1).max(6).optional(),
});
export type NoteBody = z.infer<typeof noteBodySchema>;
