import { z } from 'zod';
import { dayPlanSchema } from '../../geo/day/plan.ts';
import { LEAVE_AT } from './leave-at.ts';

const token = z.string().regex(/^[A-Za-z0-9_-]{8,64}$/);

/**
 * Where a drive or a map comes from. A page never names a path: it hands over a file and gets a token for it.
 *
 * - `sample`: comes with the program
 * - `upload`: bytes the page sent
 * - `path`: a file of this computer, handed over by the system or by a drop on the window
 * - `library`: a drive of the library
 * - `recent`: an entry of the list of recently opened files
 * - `shelf`: of a map: all maps of the shelf, no file
 */
export const sourceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sample'), id: z.string().regex(/^[a-z0-9-]{1,40}$/) }),
  z.strictObject({ kind: z.literal('upload'), token }),
  z.strictObject({ kind: z.literal('path'), token }),
  z.strictObject({ kind: z.literal('recent'), id: token }),
  z.strictObject({ kind: z.literal('library'), id: z.string().min(1).max(100) }),
  z.strictObject({ kind: z.literal('shelf') }),
]);
export type Source = z.infer<typeof sourceSchema>;

/** What a file is meant for. */
const fileUseSchema = z.enum(['drive', 'map']);
export type FileUse = z.infer<typeof fileUseSchema>;

/** A file the host took in: from the page, from the system, or named at the start. */
export const addedFileSchema = z.strictObject({
  source: sourceSchema,
  /** file name only */
  name: z.string(),
  bytes: z.number(),
  use: fileUseSchema,
});
export type AddedFile = z.infer<typeof addedFileSchema>;

/** A map that a drive was held against. */
const ownMapSchema = z.strictObject({
  name: z.string(),
  /** left out where the map is not remembered */
  source: sourceSchema.optional(),
});
export type OwnMap = z.infer<typeof ownMapSchema>;

export const recentSchema = z.strictObject({
  id: token,
  use: fileUseSchema,
  name: z.string(),
  /** ISO 8601 */
  openedAt: z.string(),
  /** of a drive: the map it was last opened on */
  map: ownMapSchema.optional(),
  /** of a drive: the leave time last chosen for it */
  leaveAt: z.string().regex(LEAVE_AT).optional(),
  /** of a drive: the day last planned for it */
  day: dayPlanSchema.optional(),
});
export type Recent = z.infer<typeof recentSchema>;
