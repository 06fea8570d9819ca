import { z } from 'zod';
import { DRAW_KINDS, LABEL_KINDS, type TileFeatures } from '../../geo/basemap/features.ts';

/** One tile of the base map; see geo/basemap/features for what the figures mean. */
export const tileSchema: z.ZodType<TileFeatures> = z.strictObject({
  z: z.number(),
  x: z.number(),
  y: z.number(),
  sea: z.boolean(),
  layers: z.array(
    z.strictObject({ kind: z.enum(DRAW_KINDS), level: z.number(), parts: z.array(z.number()) }),
  ),
  labels: z.array(
    z.strictObject({
      say: z.string(),
      kind: z.enum(LABEL_KINDS),
      rank: z.number(),
      x: z.number(),
      y: z.number(),
      angleDeg: z.number(),
    }),
  ),
});
