import { z } from 'zod';
import { BY_MOST } from '../../../geo/notes/bounds.ts';
import { LEAVE_AT } from '../leave-at.ts';
import { sourceSchema } from '../source.ts';
import { headsSchema, libraryIdSchema, yardCellSchema, yardSchema } from './yard.ts';

const empty = z.strictObject({});
const nothing = z.never();
/** More pairs nobody acknowledges at a time. */
const PAIRS_MOST = 10_000;
/** Farther from a place no drive is near it. */
const RADIUS_MOST_M = 500_000;

/** What is heard while the grid is judged. */
const judgingSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('cells'), cells: z.array(yardCellSchema) }),
  /** no cell of this drive came, and why, a sentence */
  z.strictObject({ kind: z.literal('failed'), drive: libraryIdSchema, say: z.string() }),
]);

/** The calls about the yard: the library's drives, and which vehicle may take which. */
export const YARD_CALLS = {
  /** Looks again at what lies in the library: another computer may have changed it. */
  yard: { request: empty, progress: nothing, value: yardSchema },
  /** The cells as they were last judged, some drives at a time. */
  yardCells: {
    request: empty,
    progress: z.strictObject({ cells: z.array(yardCellSchema) }),
    value: empty,
  },
  /** Judges the cells that are missing, the stale ones too, or every one, each heard of as it is done. Another judging waits for it. */
  judgeYard: {
    request: z.strictObject({ which: z.enum(['missing', 'stale', 'all']) }),
    progress: judgingSchema,
    value: z.strictObject({ judged: z.int() }),
  },
  /** The drives that come within so many metres of a place. */
  drivesNear: {
    request: z.strictObject({
      lat: z.number().min(-90).max(90),
      lon: z.number().min(-180).max(180),
      radiusM: z.number().positive().max(RADIUS_MOST_M),
    }),
    progress: z.strictObject({ share: z.number() }),
    value: z.strictObject({
      drives: z.array(libraryIdSchema),
      /** a sentence for each whose file cannot be read */
      unread: z.array(z.string()),
    }),
  },
  /** Puts the drives of a GPX file into the library. */
  addToYard: {
    request: z.strictObject({ source: sourceSchema }),
    progress: nothing,
    value: z.strictObject({
      drives: z.array(
        z.strictObject({ id: libraryIdSchema, name: z.string(), was: z.enum(['new', 'there', 'back']) }),
      ),
    }),
  },
  /** Gives a drive another name or leave time; null takes it away, what is left out stays. */
  changeDrive: {
    request: z.strictObject({
      id: libraryIdSchema,
      over: headsSchema,
      name: z.string().trim().min(1).max(200).nullable().optional(),
      leaveAt: z.string().regex(LEAVE_AT).nullable().optional(),
    }),
    progress: nothing,
    value: yardSchema,
  },
  /** Puts a drive into the bin. */
  removeDrive: {
    request: z.strictObject({ id: libraryIdSchema, over: headsSchema }),
    progress: nothing,
    value: yardSchema,
  },
  /** Takes something out of the bin. */
  restoreItem: { request: z.strictObject({ id: libraryIdSchema }), progress: nothing, value: yardSchema },
  /** Of what was changed in two places keeps one version. */
  chooseVersion: {
    request: z.strictObject({ id: libraryIdSchema, version: z.string().max(40) }),
    progress: nothing,
    value: yardSchema,
  },
  /** A person has seen what is otherwise of these pairs. */
  acceptChanges: {
    request: z.strictObject({
      pairs: z.array(z.strictObject({ drive: libraryIdSchema, vehicle: libraryIdSchema })).max(PAIRS_MOST),
      /** initials */
      by: z.string().trim().min(1).max(BY_MOST),
      /** the day, YYYY-MM-DD */
      on: z.iso.date(),
    }),
    progress: nothing,
    value: empty,
  },
} as const;
