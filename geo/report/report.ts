import { z } from 'zod';
import { TRUSTS } from '../country/cited.ts';
import { loadResultSchema } from '../load/result.ts';
import { vehicleCardSchema } from '../vehicle/card.ts';
import { daySchema } from './day.ts';
import { type Finding, findingSchema, type LeaveSpan, leaveSpanSchema } from './finding.ts';
import type { Subject } from './kinds.ts';
import { type Level, VERDICTS, type Verdict } from './level.ts';
import { noWayRoundSchema, wayRoundSchema } from './way-round.ts';

export type { Finding, LeaveSpan, Level, Subject, Verdict };

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
  match: z.strictObject({
    drivenM: z.number(),
    offMapM: z.number(),
    guessedM: z.number(),
    /** no road lies under it, and roads would with latitude and longitude swapped */
    swapped: z.literal(true).optional(),
  }),
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
  /** driving times: clear roads, no breaks; both clock times count the day's stays */
  timetable: z
    .strictObject({
      /** ISO 8601 with the offset of the place; both only with a leave time, the second only where enough is mapped */
      leaveAt: z.string().optional(),
      arriveAt: z.string().optional(),
      /** the leave time was over when the check was made */
      past: z.literal(true).optional(),
      /** what lies off the map counted at 20 km/h, however much that is */
      drivingS: z.number(),
      /** stays at the day's stops, in all */
      staysS: z.number().optional(),
      notes: z.array(z.string()),
    })
    .optional(),
  /** the day's stops and what falls due, where a day is planned */
  day: daySchema.optional(),
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
  /** both or neither: only where ways round were asked for */
  waysRound: z.array(wayRoundSchema).optional(),
  noWayRound: z.array(noWayRoundSchema).optional(),
  verdict: z.enum(VERDICTS),
  cautions: z.array(z.string()),
});
export type DriveReport = z.infer<typeof driveReportSchema>;
