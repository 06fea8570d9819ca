import { z } from 'zod';
import { SERVICE_KINDS } from '../services/kinds.ts';

const kinds = z.array(z.enum(SERVICE_KINDS));
/** ISO 8601 with the offset of the place it is said of: 2027-06-12T09:42+01:00 */
const clock = z.string();

/** A stop of the day as the drive meets it. */
const stopTimesSchema = z.strictObject({
  name: z.string(),
  lat: z.number(),
  lon: z.number(),
  /** metres along the drive */
  atM: z.number(),
  stayS: z.number(),
  services: kinds,
  osm: z.strictObject({ type: z.enum(['node', 'way']), id: z.number() }).optional(),
  /** both only with a leave time */
  arriveAt: clock.optional(),
  leaveAt: clock.optional(),
  /** the latest leaving to be home by the return hour, margin kept; only with a return hour */
  latestLeaveAt: clock.optional(),
  /** what is left from here to the end: driving, later stays, and the margin on both */
  drivingOnS: z.number(),
  staysOnS: z.number(),
  marginOnS: z.number(),
  /** whether it is open when the vehicle arrives; only where hours are mapped and a leave time is given */
  open: z
    .strictObject({ is: z.enum(['open', 'closed', 'unknown']), hours: z.string(), say: z.string() })
    .optional(),
});
export type StopTimes = z.infer<typeof stopTimesSchema>;

/** Something that falls due at a minute, for a list, a sheet or a calendar. In the order it falls due. */
const dueSchema = z.strictObject({
  kind: z.enum(['leave', 'leave stop', 'service', 'home']),
  services: kinds.optional(),
  /** the minute; absent where no return hour is given */
  by: clock.optional(),
  /** where it is done; absent where no stop is for it yet */
  stop: z.number().optional(),
  /** "Empty the cassette by 16:10" */
  say: z.string(),
});
export type DueItem = z.infer<typeof dueSchema>;

/** Advice on the day that never stops anyone. */
const adviceSchema = z.strictObject({
  kind: z.enum(['break', 'cassette']),
  /** metres along the drive: where to heed it */
  atM: z.number(),
  lat: z.number(),
  lon: z.number(),
  at: clock.optional(),
  say: z.string(),
});
export type DayAdvice = z.infer<typeof adviceSchema>;

/** The day of a drive: the plan's stops met in driving order, when to leave each at the latest, and what falls due. */
export const daySchema = z.strictObject({
  /** what is kept back beside the times told */
  margin: z.strictObject({ drivingShare: z.number(), perServiceS: z.number() }),
  stops: z.array(stopTimesSchema),
  /** from the start: times as at a stop */
  start: z.strictObject({
    leaveAt: clock.optional(),
    latestLeaveAt: clock.optional(),
    drivingOnS: z.number(),
    staysOnS: z.number(),
    marginOnS: z.number(),
  }),
  end: z.strictObject({
    arriveAt: clock.optional(),
    homeBy: clock.optional(),
    /** what is left of the time until the return hour when all goes as told, the margin taken off; negative: too late */
    spareS: z.number().optional(),
  }),
  due: z.array(dueSchema),
  advice: z.array(adviceSchema),
  /** stops of the plan that the drive does not pass: not counted with */
  missed: z.array(z.strictObject({ name: z.string(), lat: z.number(), lon: z.number() })),
  /** sentences: what is too late, what was assumed, what is not known */
  notes: z.array(z.string()),
});
export type Day = z.infer<typeof daySchema>;
