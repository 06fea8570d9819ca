import { z } from 'zod';

const bytes = z.number().min(0);

/** How a map came to the shelf. */
const originSchema = z.enum(['file', 'line', 'region', 'unknown']);

/** One map of the shelf, as the page shows it. */
const shelfMapSchema = z.strictObject({
  name: z.string(),
  roads: z.number(),
  bytes,
  /** ISO date of its oldest data; left out where it is not known */
  dataDate: z.string().optional(),
  /** the day of newer data that it took the place of, where its own is older or tells no date */
  newerBefore: z.string().optional(),
  /** ISO 8601 */
  imported: z.string(),
  sources: z.array(z.strictObject({ name: z.string(), sha256: z.string() })),
  state: z.enum(['ready', 'damaged']),
  /**
   * of a damaged one: whether all files that it was made from are there, or why not: they came as copies through a
   * window, what was fetched was not kept, or they have gone from where they lay
   */
  mendFrom: z.enum(['files', 'copy', 'fetched', 'gone']).optional(),
  origin: originSchema,
  /** whether it holds main roads alone */
  mainRoadsOnly: z.boolean(),
  /** the largest places on it, where they tell where it lies */
  around: z.array(z.string()).optional(),
  /** where it has roads: columns and rows of a zoom, for a small drawing */
  area: z.strictObject({ zoom: z.number(), tiles: z.array(z.tuple([z.number(), z.number()])) }),
});
export type ShelfMap = z.infer<typeof shelfMapSchema>;

/** A map that was taken in. */
export const importedMapSchema = shelfMapSchema.extend({
  /** the map whose name was wanted, which lies elsewhere and stays */
  beside: z.string().optional(),
});
export type ImportedMap = z.infer<typeof importedMapSchema>;

/** The whole shelf. */
export const shelfSchema = z.strictObject({
  /** where it is kept on this computer */
  folder: z.string(),
  bytes,
  maps: z.array(shelfMapSchema),
});
export type ShelfShown = z.infer<typeof shelfSchema>;

/** What reading all of a map found. */
export const verifiedSchema = z.strictObject({
  name: z.string(),
  state: z.enum(['ready', 'damaged']),
  damagedBlocks: z.number(),
  /** whether it was mended, and how it went, in a sentence */
  repair: z.strictObject({ done: z.boolean(), say: z.string() }).optional(),
});

/** A map's name, as it stands on the shelf. */
export const mapNameSchema = z.string().min(1).max(200);
