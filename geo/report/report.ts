import { z } from 'zod';
import { TRUSTS } from '../country/cited.ts';
import { loadResultSchema } from '../load/result.ts';
import { vehicleCardSchema } from '../vehicle/card.ts';
import { isKindOf, KINDS, type Kind, SUBJECTS, type Subject, WANTS } from './kinds.ts';
import { LEVELS, type Level, VERDICTS, type Verdict } from './level.ts';
import { turnSchema } from './turn.ts';

export type { Level, Subject, Verdict };

const ALL_KINDS: readonly Kind[] = Object.values(KINDS).flat();

const place = z.strictObject({ lat: z.number(), lon: z.number() });

/** Leave times of one day on the clock of the place where the drive begins, 2027-06-17T06:45; `to` itself is not one. */
const leaveSpanSchema = z.strictObject({ from: z.string(), to: z.string() });
export type LeaveSpan = z.infer<typeof leaveSpanSchema>;

/** What the drive comes to when it leaves within a part of the day. */
const leaveVerdictSchema = leaveSpanSchema.extend({
  verdict: z.enum(VERDICTS),
  /** findings of each level that are not folded */
  counts: z.strictObject({
    barred: z.number(),
    tight: z.number(),
    unknown: z.number(),
    care: z.number(),
  }),
});
export type LeaveVerdict = z.infer<typeof leaveVerdictSchema>;

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

/** The report of one drive with one vehicle, format `lanegauge.report` version 1. */
export const driveReportSchema = z.strictObject({
  format: z.literal('lanegauge.report'),
  version: z.literal(1),
  program: z.string(),
  /** ISO 8601 */
  made: z.string(),
  route: z.strictObject({
    name: z.string(),
    file: z.string(),
    lengthM: z.number(),
    segments: z.number(),
    positions: z.number(),
  }),
  vehicle: vehicleCardSchema,
  /** the vehicle as loaded, where a load is given */
  load: loadResultSchema.optional(),
  leaveAt: z.string().optional(),
  /** only with a leave time: the whole of its day, from the first minute to the last, in parts of one verdict each */
  leaveTimes: z.array(leaveVerdictSchema).optional(),
  /** ISO 3166-1 alpha-2 */
  country: z.array(z.string()),
  map: z.strictObject({
    sources: z.array(
      z.strictObject({ name: z.string(), sha256: z.string(), dataDate: z.string().optional() }),
    ),
    roads: z.number(),
  }),
  match: z.strictObject({ drivenM: z.number(), offMapM: z.number(), guessedM: z.number() }),
  roads: z.array(
    z.strictObject({
      way: z.number(),
      forward: z.boolean(),
      fromM: z.number(),
      toM: z.number(),
      name: z.string().optional(),
      ref: z.string().optional(),
      class: z.string(),
    }),
  ),
  /** driving times: clear roads, no breaks */
  timetable: z
    .strictObject({
      /** ISO 8601 with the offset of the place; both only with a leave time */
      leaveAt: z.string().optional(),
      arriveAt: z.string().optional(),
      drivingS: z.number(),
      notes: z.array(z.string()),
    })
    .optional(),
  /** rows of the country table that were asked, each with where it comes from */
  rules: z
    .array(
      z.strictObject({
        /** ISO 3166-1 alpha-2; absent where the country is not known */
        country: z.string().optional(),
        about: z.string(),
        says: z.string(),
        source: z.string(),
        /** how far the source can be relied on; from memory is no fact */
        trust: z.enum(TRUSTS),
      }),
    )
    .optional(),
  findings: z.array(findingSchema),
  verdict: z.enum(VERDICTS),
  cautions: z.array(z.string()),
});
export type DriveReport = z.infer<typeof driveReportSchema>;
