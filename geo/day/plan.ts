import { z } from 'zod';
import { SERVICE_KINDS } from '../services/kinds.ts';
import { STAY_MOST_MIN, STOPS_MOST } from './bounds.ts';

/** Share of the driving, and time at each stop for tanks, that is kept back beside the times told. */
export const MARGIN = { drivingShare: 0.15, perServiceMin: 10 } as const;

/** A stop on the drive. */
export const dayStopSchema = z.strictObject({
  name: z.string().min(1).max(200),
  /** degrees, on the road where the vehicle stands */
  lat: z.number().min(-90).max(90),
  lon: z.number().min(-180).max(180),
  /** metres along the drive when it was put there: tells which pass is meant where a place is passed twice */
  atM: z.number().min(0).optional(),
  stayMin: z.number().min(0).max(STAY_MOST_MIN),
  /** what is done there with tanks */
  services: z.array(z.enum(SERVICE_KINDS)).max(SERVICE_KINDS.length).optional(),
  /** the mapped place that it is for */
  osm: z.strictObject({ type: z.enum(['node', 'way']), id: z.number() }).optional(),
  /** its opening hours as mapped when it was chosen */
  hours: z.string().max(1000).optional(),
});
export type DayStop = z.infer<typeof dayStopSchema>;

/** A day with the vehicle beside its drive and its leave time: where it stops, and when it has to be back. */
export const dayPlanSchema = z.strictObject({
  /** in any order: they are met in the drive's */
  stops: z.array(dayStopSchema).max(STOPS_MOST),
  /** when the yard, the drive's end, takes it back at the latest: wall time there, 2027-06-12T17:00 */
  homeBy: z
    .string()
    .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/)
    .optional(),
  /** what is to be done before the yard, whether or not a stop is for it yet */
  before: z.array(z.enum(SERVICE_KINDS)).max(SERVICE_KINDS.length).optional(),
});
export type DayPlan = z.infer<typeof dayPlanSchema>;
