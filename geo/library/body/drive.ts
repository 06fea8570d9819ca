import { z } from 'zod';

/** Lowercase hexadecimal of SHA-256. */
export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

const LEAVE_AT = /^\d{4}-\d\d-\d\dT\d\d:\d\d$/;

/**
 * A drive of the library: which track of which GPX file, and what the firm has chosen for it. The file itself is kept
 * beside the records, byte for byte, under its hash. What a later program adds is kept as it stands.
 */
export const driveBodySchema = z.looseObject({
  /** of the GPX file's bytes */
  gpx: sha256Schema,
  /** what the file was called */
  file: z.string().min(1).max(255),
  /** 1-based place among the file's tracks and routes, tracks first */
  track: z.int().min(1),
  /** the track's own name, '' where it has none */
  trackName: z.string().max(1000),
  /** where one file holds several drives, the days of a tour: which of them this is */
  day: z.looseObject({ number: z.int().min(1), of: z.int().min(2) }).optional(),
  lengthM: z.number().min(0),
  /** [lat, lon] of the first and the last position, degrees */
  from: z.tuple([z.number(), z.number()]),
  to: z.tuple([z.number(), z.number()]),
  /** what the firm calls it, once renamed */
  name: z.string().min(1).max(200).optional(),
  /** local wall time, YYYY-MM-DDTHH:MM */
  leaveAt: z.string().regex(LEAVE_AT).optional(),
  /** stops and return hour of the day, as `keptDay` reads them: one that it cannot read must not hide the drive */
  plan: z.looseObject({}).optional(),
});
export type DriveBody = z.infer<typeof driveBodySchema>;

/** What a drive is called: as renamed, by its track, or by its file without its ending. */
export function driveName({ name, trackName, file }: DriveBody): string {
  if (name !== undefined) return name;
  return trackName === '' ? file.replace(/\.gpx$/i, '') || file : trackName;
}
