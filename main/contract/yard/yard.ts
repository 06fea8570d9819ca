import { z } from 'zod';
import { DIFFERENCE_KINDS } from '../../../geo/library/differences/difference.ts';
import { cellSchema } from '../../../geo/yard/cell.ts';
import { STALE } from '../../../geo/yard/made-of.ts';
import { LEAVE_AT } from '../leave-at.ts';

export const libraryIdSchema = z.string().min(1).max(100);
const version = z.string().max(40);
/** names of the versions an item has: a change takes the place of these */
export const headsSchema = z.array(version).max(1000);

/** A row of the grid. */
const yardDriveSchema = z.strictObject({
  id: libraryIdSchema,
  name: z.string(),
  file: z.string(),
  /** 1-based place among the file's tracks */
  track: z.int().min(1),
  day: z.strictObject({ number: z.int(), of: z.int() }).optional(),
  lengthM: z.number(),
  leaveAt: z.string().regex(LEAVE_AT).optional(),
  /** another drive has its name: what tells this one from it, such as its file */
  alike: z.string().optional(),
  /** a sentence, where a day is kept with it that cannot be read */
  unread: z.string().optional(),
  heads: headsSchema,
});
export type YardDrive = z.infer<typeof yardDriveSchema>;

/** A column of the grid. */
const yardVehicleSchema = z.strictObject({
  id: libraryIdSchema,
  /** its id in the fleet */
  vehicleId: z.string(),
  name: z.string(),
});
export type YardVehicle = z.infer<typeof yardVehicleSchema>;

/** What lies in the bin. */
const binnedSchema = z.strictObject({
  id: libraryIdSchema,
  kind: z.enum(['drive', 'vehicle', 'note']),
  name: z.string(),
  /** ISO 8601 */
  deleted: z.string(),
});
export type Binned = z.infer<typeof binnedSchema>;

/** Something that was changed in two places at once: a person chooses which version holds. */
const apartSchema = z.strictObject({
  id: libraryIdSchema,
  kind: z.enum(['drive', 'vehicle', 'load', 'note']),
  name: z.string(),
  versions: z.array(
    z.strictObject({
      version,
      /** ISO 8601, by the clock of the computer it was made on; '' where nobody tells */
      made: z.string(),
      /** in what it differs from the others, a line each */
      says: z.array(z.string()),
    }),
  ),
  /** removed in one of the places: when, ISO 8601 */
  removed: z.string().optional(),
});
export type Apart = z.infer<typeof apartSchema>;

/** The library as the yard shows it. */
export const yardSchema = z.strictObject({
  folder: z.string(),
  drives: z.array(yardDriveSchema),
  vehicles: z.array(yardVehicleSchema),
  bin: z.array(binnedSchema),
  apart: z.array(apartSchema),
  /** sentences about what lies there */
  notices: z.array(z.string()),
});
export type Yard = z.infer<typeof yardSchema>;

/** A drive with a vehicle, as the grid shows it. */
export const yardCellSchema = z.strictObject({
  drive: libraryIdSchema,
  vehicle: libraryIdSchema,
  cell: cellSchema,
  /** why a check would say otherwise today */
  stale: z.array(z.enum(STALE)),
  /** what is otherwise than a person has seen it */
  changes: z.array(z.strictObject({ kind: z.enum(DIFFERENCE_KINDS), finding: z.string(), say: z.string() })),
});
export type YardCell = z.infer<typeof yardCellSchema>;
