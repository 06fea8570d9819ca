import { z } from 'zod';
import { fetchedSchema, fetchPlanSchema } from './fetch.ts';
import { importedMapSchema, mapNameSchema, shelfSchema, verifiedSchema } from './shelf.ts';
import { sourceSchema } from './source.ts';
import { workSchema } from './work.ts';

const empty = z.strictObject({});
const nothing = z.never();
/** 1-based place among the drive's tracks */
const track = z.int().min(1);
const fetchBySchema = z.enum(['line', 'region']);

/** The calls about the shelf. What is long goes on while others are answered. */
export const SHELF_CALLS = {
  shelf: { request: empty, progress: nothing, value: shelfSchema },
  /** Takes a map file in; without a name under its file's. One of that name is replaced when the new one is whole, or stays where it lies in another place. */
  importMap: {
    request: z.strictObject({ source: sourceSchema, name: mapNameSchema.optional() }),
    progress: workSchema,
    value: importedMapSchema,
  },
  /** Reads all of a map; with `repair` a damaged one is made anew from its source, or set aside. */
  verifyMap: {
    request: z.strictObject({ name: mapNameSchema, repair: z.boolean() }),
    progress: workSchema,
    value: verifiedSchema,
  },
  /** What fetching the map of a drive would take. Nothing is sent for it: it is worked out here. */
  planFetch: {
    request: z.strictObject({ source: sourceSchema, track: track.optional(), by: fetchBySchema }),
    progress: workSchema,
    value: fetchPlanSchema,
  },
  /** Takes the step that was planned and agreed to. */
  fetchMap: {
    request: z.strictObject({
      source: sourceSchema,
      track: track.optional(),
      by: fetchBySchema,
      /** of fetching by region: the step agreed to */
      step: z.enum(['index', 'sizes', 'maps']).optional(),
      /** of fetching by region: whether the files that were fetched stay beside the maps made of them */
      keepFiles: z.boolean().optional(),
    }),
    progress: workSchema,
    value: fetchedSchema,
  },
  removeMap: { request: z.strictObject({ name: mapNameSchema }), progress: nothing, value: shelfSchema },
} as const;
