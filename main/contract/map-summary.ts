import { z } from 'zod';

const place = z.strictObject({ lat: z.number(), lon: z.number() });
const box = z.strictObject({ south: z.number(), west: z.number(), north: z.number(), east: z.number() });

/** What the page is told of the map that is open. */
export const mapSummarySchema = z.strictObject({
  name: z.string(),
  sources: z.array(z.strictObject({ name: z.string(), sha256: z.string(), dataDate: z.string().optional() })),
  /** driven ways: roads and ferries */
  roads: z.number(),
  /** degrees; null for a map without a single road */
  bounds: box.nullable(),
  center: place.nullable(),
  notes: z.array(z.string()),
  /** of the shelf: how it covers the drive it was opened about */
  shelf: z
    .strictObject({
      /** names of the maps used, in order */
      maps: z.array(z.string()),
      /** the line's length, metres; 0 without a drive */
      lengthM: z.number(),
      /** stretches without a road near, metres along the line as drawn */
      bare: z.array(z.strictObject({ fromM: z.number(), toM: z.number() })),
      /** whether every map used holds main roads alone */
      mainRoadsOnly: z.boolean(),
      damaged: z.array(z.string()),
      /** where to look first without a drive: the map with most roads, where there are several */
      lookAt: box.optional(),
    })
    .optional(),
});
export type MapSummary = z.infer<typeof mapSummarySchema>;
