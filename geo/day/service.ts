import { z } from 'zod';
import { daySchema } from '../report/day.ts';
import { wayRoundSchema } from '../report/way-round.ts';
import { SERVICE_KINDS } from '../services/kinds.ts';
import { dayStopSchema } from './plan.ts';

const osm = z.strictObject({ type: z.enum(['node', 'way']), id: z.number() });

/** A place near the drive where tanks can be seen to, that this vehicle reaches. */
export const serviceOnWaySchema = z.strictObject({
  osm,
  name: z.string(),
  lat: z.number(),
  lon: z.number(),
  /** of what was looked for, what the map says there is, or leaves open */
  offers: z.array(z.strictObject({ kind: z.enum(SERVICE_KINDS), is: z.enum(['yes', 'unknown']) })),
  /** who may use it, fee, roof over the pumps, what is not mapped: sentences */
  say: z.array(z.string()),
  /** metres along the drive, where it passes nearest */
  nearM: z.number(),
  /** metres between the place and the road where the vehicle stops */
  awayM: z.number(),
  /** off the drive and back, as one that passes a bar is told; absent where the drive itself goes by */
  way: wayRoundSchema.omit({ findingIds: true, findings: true, roads: true }).optional(),
  /** driving time it costs, against the drive as it is */
  extraS: z.number(),
  /** the stop it makes of a day on the drive with that way in it */
  stop: dayStopSchema,
  /** the day then, as far as this stop bears on it */
  arriveAt: z.string().optional(),
  latestLeaveAt: z.string().optional(),
  open: daySchema.shape.stops.element.shape.open,
  /** what is left until the return hour then */
  spareS: z.number().optional(),
});
export type ServiceOnWay = z.infer<typeof serviceOnWaySchema>;

/** What was found along a drive. */
export const servicesFoundSchema = z.strictObject({
  /** what surely has it first, then the least detour */
  services: z.array(serviceOnWaySchema),
  /** places that it cannot reach or may not use, with the reason */
  not: z.array(
    z.strictObject({
      osm,
      name: z.string(),
      lat: z.number(),
      lon: z.number(),
      nearM: z.number(),
      why: z.string(),
    }),
  ),
  /** places near the drive that were not tried, since so many others are nearer */
  leftOut: z.number(),
});
export type ServicesFound = z.infer<typeof servicesFoundSchema>;
