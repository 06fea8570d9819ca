import { z } from 'zod';
import { sha256Schema } from './drive.ts';

const named = z.looseObject({ name: z.string().min(1).max(255), sha256: sha256Schema });
const libraryId = z.string().min(1).max(80);

/** A check as it was handed out: from what it was made, and the files given, kept beside the records byte for byte. */
export const handedBodySchema = z.looseObject({
  /** the sheet number */
  number: z.string().min(1).max(20),
  program: z.string().max(100),
  /** ids of the library's, where drive and vehicle stand in it */
  drive: libraryId.optional(),
  vehicle: libraryId.optional(),
  driveName: z.string().max(200),
  vehicleName: z.string().max(200),
  leaveAt: z.string().optional(),
  /** hashes of what the check was made from */
  gpx: sha256Schema,
  card: sha256Schema,
  load: sha256Schema.optional(),
  notes: z.array(z.string()),
  maps: z.array(z.looseObject({ ...named.shape, dataDate: z.string().optional() })),
  /** every file handed over, the report among them */
  files: z.array(named),
  /** the sheet number it takes the place of */
  replaces: z.string().max(20).optional(),
});

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
