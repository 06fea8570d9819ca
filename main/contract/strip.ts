import { z } from 'zod';
import type { Strip } from '../../geo/drive/strip/strip.ts';

const side = z.enum(['left', 'right']);
const metres = z.number();

/** A strip as it crosses to the page; what the figures mean stands in geo/drive/strip/strip.ts. */
export const stripSchema: z.ZodType<Strip> = z.strictObject({
  lengthM: metres,
  pieces: z.array(
    z.strictObject({
      fromM: metres,
      toM: metres,
      widthM: metres,
      name: z.string().exactOptional(),
      ref: z.string().exactOptional(),
      kind: z.enum(['road', 'bridge', 'tunnel', 'ferry', 'offMap']),
    }),
  ),
  lean: z.array(z.number()),
  leanStepM: metres,
  stubs: z.array(z.strictObject({ atM: metres, side, main: z.boolean() })),
  beside: z.array(
    z.strictObject({ fromM: metres, toM: metres, side, kind: z.enum(['water', 'wood', 'building']) }),
  ),
  towns: z.array(
    z.strictObject({
      atM: metres,
      name: z.string(),
      size: z.union([z.literal(1), z.literal(2), z.literal(3)]),
    }),
  ),
  guessed: z.array(z.strictObject({ fromM: metres, toM: metres })),
  crossings: z.array(metres),
  above: z.array(z.strictObject({ atM: metres, rail: z.boolean(), height: z.string().exactOptional() })),
});
