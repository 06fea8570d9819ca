import { z } from 'zod';

const place = z.strictObject({ lat: z.number(), lon: z.number() });

/** What the page is told of the map that is open. */
export const mapSummarySchema = z.strictObject({
  name: z.string(),
  sources: z.array(z.strictObject({ name: z.string(), sha256: z.string(), dataDate: z.string().optional() })),
  /** driven ways: roads and ferries */
  roads: z.number(),
  /** degrees; null for a map without a single road */
  bounds: z
    .strictObject({ south: z.number(), west: z.number(), north: z.number(), east: z.number() })
    .nullable(),
  center: place.nullable(),
  notes: z.array(z.string()),
});
export type MapSummary = z.infer<typeof mapSummarySchema>;
