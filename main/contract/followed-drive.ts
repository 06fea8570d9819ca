import { z } from 'zod';
import { dayPlanSchema } from '../../geo/day/plan.ts';
import type { Span } from '../../geo/drive/drive.ts';
import { LEAVE_AT } from './leave-at.ts';

const span: z.ZodType<Span> = z.strictObject({ fromM: z.number(), toM: z.number() });
/** Positions of one leg: latitude and longitude in turn, degrees; `alongM` has one entry per position. */
const line = { line: z.array(z.number()), alongM: z.array(z.number()) };

const followedLegSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('stretch'),
    fromM: z.number(),
    toM: z.number(),
    /** OSM id */
    way: z.number(),
    forward: z.boolean(),
    class: z.string(),
    name: z.string().optional(),
    ref: z.string().optional(),
    ...line,
  }),
  z.strictObject({ kind: z.literal('offMap'), fromM: z.number(), toM: z.number(), ...line }),
  /** a break between two segments of the file: not driven */
  z.strictObject({ kind: z.literal('gap'), fromM: z.number(), toM: z.number(), ...line }),
]);
export type FollowedLeg = z.infer<typeof followedLegSchema>;

const trackSchema = z.strictObject({
  kind: z.enum(['track', 'route']),
  /** 1-based among its kind */
  number: z.number(),
  name: z.string(),
  positions: z.number(),
});

/** A drive as the page knows it: what its file holds, and the roads it was followed along. */
export const followedDriveSchema = z.strictObject({
  driveId: z.string(),
  name: z.string(),
  /** file name only */
  file: z.string(),
  /** all that the file holds, and the one taken */
  tracks: z.array(trackSchema),
  /** 1-based place among `tracks` */
  taken: z.number(),
  lengthM: z.number(),
  legs: z.array(followedLegSchema),
  guessed: z.array(span),
  doubtful: z.array(span),
  match: z.strictObject({
    drivenM: z.number(),
    offMapM: z.number(),
    guessedM: z.number(),
    swapped: z.literal(true).optional(),
  }),
  /** of one made here from the shelf: names of the maps used, in order, and the dates of their data */
  shelf: z
    .strictObject({
      maps: z.array(z.string()),
      sources: z.array(z.object({ dataDate: z.string().optional() })),
    })
    .optional(),
  notes: z.array(z.string()),
  /** its end can only be left by turning round, as it was laid out or as its file says */
  turnAtEnd: z.literal(true).optional(),
  /** where the vehicle stops on the way, as it was planned or as its file says */
  stops: z.array(z.strictObject({ lat: z.number(), lon: z.number(), atM: z.number().optional() })).optional(),
  /** the leave time kept with it, where one is */
  leaveAt: z.string().regex(LEAVE_AT).optional(),
  /** the day kept with it */
  day: dayPlanSchema.optional(),
});
export type FollowedDrive = z.infer<typeof followedDriveSchema>;
