import { z } from 'zod';
import { ALL_KINDS, isKindOf, SUBJECTS, WANTS } from './kinds.ts';
import { LEVELS } from './level.ts';
import { turnSchema } from './turn.ts';

const place = z.strictObject({ lat: z.number(), lon: z.number() });

/** Leave times of one day on the clock of the place where the drive begins, 2027-06-17T06:45; `to` itself is not one. */
export const leaveSpanSchema = z.strictObject({ from: z.string(), to: z.string() });
export type LeaveSpan = z.infer<typeof leaveSpanSchema>;

export const findingSchema = z
  .strictObject({
    /** subject + OSM ids + direction (+ pass number): the same input gives the same id */
    id: z.string(),
    level: z.enum(LEVELS),
    subject: z.enum(SUBJECTS),
    /** one of the subject's own (kinds.ts) */
    kind: z.enum(ALL_KINDS),
    wants: z.enum(WANTS).optional(),
    /** id of the local note that made or settled it */
    note: z.string().optional(),
    /** metres along the drive; equal for a finding at a node */
    fromM: z.number(),
    toM: z.number(),
    /** where it first binds */
    at: place,
    road: z.string().optional(),
    osm: z.array(z.strictObject({ type: z.enum(['node', 'way', 'relation']), id: z.number() })),
    /** the tags that decided, as mapped */
    tags: z.record(z.string(), z.string()),
    limit: z
      .strictObject({ value: z.number(), unit: z.enum(['m', 'kg', 'deg', '%']), asMapped: z.string() })
      .optional(),
    /** the card's figure */
    vehicle: z
      .strictObject({
        value: z.number(),
        unit: z.string(),
        what: z.string(),
        /** the axle it is of, where it is one axle's */
        axle: z.enum(['front', 'rear']).optional(),
      })
      .optional(),
    /** limit minus vehicle, negative when over; height counts its measuring allowance */
    spare: z.number().optional(),
    passesAt: z.string().optional(),
    /** when the clock next lets the vehicle by, local wall time of the place: 2027-06-17T08:00 */
    opensAt: z.string().optional(),
    /**
     * where hours decide and it stops the vehicle or may: the leave times of that day at which it is met no more, none
     * when empty
     */
    leaveTimes: z.array(leaveSpanSchema).optional(),
    /** for the subjects turn and swing */
    turn: turnSchema.optional(),
    say: z.string(),
    advice: z.string(),
    /** of little weight: counted in one line under the verdict, which it does not colour */
    folded: z.literal(true).optional(),
  })
  .refine(({ subject, kind }) => isKindOf(subject, kind), {
    path: ['kind'],
    error: 'no kind of this subject',
  });
export type Finding = z.infer<typeof findingSchema>;
