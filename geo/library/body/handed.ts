import { z } from 'zod';
import { loadListSchema } from '../../load/list/load-list.ts';
import { sha256Schema } from './drive.ts';

const named = z.looseObject({ name: z.string().min(1).max(255), sha256: sha256Schema });
const libraryId = z.string().min(1).max(80);

/** What a check that is handed out was made from. What a later program adds is kept as it stands. */
export const handedFactsSchema = z.looseObject({
  program: z.string().max(100),
  /** ids of the library's, where drive and vehicle stand in it */
  drive: libraryId.optional(),
  vehicle: libraryId.optional(),
  driveName: z.string().max(200),
  vehicleName: z.string().max(200),
  verdict: z.enum(['barred', 'tight', 'unknown', 'care', 'clear']).optional(),
  /** local wall time, YYYY-MM-DDTHH:MM */
  leaveAt: z.string().optional(),
  /** the end of the drive by the driving times, stays counted, local wall time */
  arriveAt: z.string().optional(),
  /** hashes of what the check was made from */
  gpx: sha256Schema,
  /** 1-based place among the file's tracks and routes, tracks first */
  track: z.int().min(1).optional(),
  card: sha256Schema,
  load: sha256Schema.optional(),
  /** the load itself, to be weighed again */
  items: loadListSchema.shape.items.optional(),
  /** the load was the one that the library has for the vehicle */
  loadKept: z.boolean().optional(),
  /** ids of the notes that hold about the drive, each with a hash of what it said */
  notes: z.array(z.string()),
  maps: z.array(z.looseObject({ ...named.shape, dataDate: z.string().optional() })),
  /** which maps of the shelf hold something about the drive, where it was checked on the shelf */
  mapKey: z.string().optional(),
  /** where the drive lies, with what is read about it, degrees */
  box: z.object({ south: z.number(), north: z.number(), west: z.number(), east: z.number() }).optional(),
  /** what else the check was asked with */
  margins: z.looseObject({ heightM: z.number(), physicalWidthM: z.number() }).optional(),
  country: z.string().max(2).optional(),
  plan: z.looseObject({}).optional(),
  /** of report.json */
  report: sha256Schema.optional(),
  /** the sheet number it takes the place of */
  replaces: z.string().max(20).optional(),
});
export type HandedFacts = z.infer<typeof handedFactsSchema>;

/** A check as it was handed out: what it was made from, and the files given, kept beside the records byte for byte. */
export const handedBodySchema = z.looseObject({
  ...handedFactsSchema.shape,
  /** the sheet number */
  number: z.string().min(1).max(20),
  /** every file handed over, the report among them */
  files: z.array(named),
});
export type HandedBody = z.infer<typeof handedBodySchema>;

/** A person has seen what changed of one drive with one vehicle. */
export const seenBodySchema = z.looseObject({
  drive: libraryId,
  vehicle: libraryId,
  /** initials, and the day */
  by: z.string().min(1).max(6),
  on: z.string().regex(/^\d{4}-\d\d-\d\d$/),
  /** the changes as they were shown */
  changes: z.array(
    z.looseObject({
      kind: z.enum(['new', 'gone', 'changed', 'now mapped', 'road changed']),
      finding: z.string().max(500),
    }),
  ),
});
