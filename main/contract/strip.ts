import { z } from 'zod';

const side = z.enum(['left', 'right']);
const metres = z.number();

/** geo/strip/strip.ts as it crosses to the page. */
export const stripSchema = z.strictObject({
  lengthM: metres,
  pieces: z.array(
    z.strictObject({
      fromM: metres,
      toM: metres,
      widthM: metres,
      name: z.string().optional(),
      ref: z.string().optional(),
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
  above: z.array(z.strictObject({ atM: metres, rail: z.boolean(), height: z.string().optional() })),
});
export type StripView = z.infer<typeof stripSchema>;
