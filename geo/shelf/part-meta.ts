import { z } from 'zod';

const count = z.int().min(0);
const boxSchema = z.strictObject({
  south: z.number(),
  west: z.number(),
  north: z.number(),
  east: z.number(),
});

/** What a part says of itself. */
export const partMetaSchema = z.strictObject({
  source: z.strictObject({ name: z.string(), sha256: z.string(), bytes: count }),
  /** ISO date of the data where the source tells it */
  dataDate: z.string().optional(),
  /** as reading the source itself would say */
  notes: z.array(z.string()),
  incomplete: z.array(z.string()),
  /** distinct driven ways: roads and ferries */
  roads: count,
  /** of the roads: tertiary and higher; lesser ones that motor vehicles use */
  mainRoads: count,
  minorRoads: count,
  nodes: count,
  /** degrees; null without a single road */
  box: boxSchema.nullable(),
  /** the largest places on it, where they tell where it lies; not told of parts made before that was kept */
  around: z.array(z.string()).optional(),
});
export type PartMeta = z.infer<typeof partMetaSchema>;

/** Of a whole map most roads are lesser ones; of one thinned to its main roads next to none are. */
const MINOR_LEAST = 0.05;

/** Whether a part holds main roads alone: what lies beside them is not on it. */
export function isMainOnly({ mainRoads, minorRoads }: PartMeta): boolean {
  return mainRoads > 0 && minorRoads < MINOR_LEAST * (mainRoads + minorRoads);
}
