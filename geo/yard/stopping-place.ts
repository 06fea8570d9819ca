import { z } from 'zod';
import { given } from '../given.ts';
import { type Finding, findingSchema } from '../report/finding.ts';

/** A place that stops a vehicle: the same for every drive and vehicle that meets it. */
export const stoppingPlaceSchema = z.strictObject({
  /** object of the map and subject; by place where there is no object */
  key: z.string(),
  subject: findingSchema.shape.subject,
  kind: findingSchema.shape.kind,
  road: z.string().optional(),
  at: findingSchema.shape.at,
  limit: findingSchema.shape.limit,
});
export type StoppingPlace = z.infer<typeof stoppingPlaceSchema>;

/** Where a finding is, told apart from other places and not from other vehicles. */
export function placeOfFinding({ subject, kind, road, at, limit, osm }: Finding): StoppingPlace {
  const [object] = osm;
  const key =
    object === undefined
      ? `${subject}:${at.lat.toFixed(4)},${at.lon.toFixed(4)}`
      : `${subject}:${object.type}${object.id}`;
  return { key, subject, kind, at: { ...at }, ...given({ road, limit }) };
}
