import { z } from 'zod';

/** What may be too much: the three plates, and the rack's own limit. */
const LOAD_LIMITS = ['front', 'rear', 'gross', 'rack'] as const;
export type LoadLimit = (typeof LOAD_LIMITS)[number];

const axlesAndGross = z.strictObject({ frontKg: z.number(), rearKg: z.number(), grossKg: z.number() });

/** A vehicle as loaded, held against its plates. Kilograms and metres. */
export const loadFiguresSchema = z.strictObject({
  frontKg: z.number(),
  rearKg: z.number(),
  grossKg: z.number(),
  /** plate minus load, negative when over */
  spare: axlesAndGross,
  /** of the gross mass on the front axle, a fraction */
  frontShare: z.number(),
  plates: axlesAndGross,
  runningOrder: axlesAndGross,
  /** gross plate minus empty weight, and what is left of it */
  payloadKg: z.number(),
  payloadLeftKg: z.number(),
  /** the plate with the least spare */
  bindsFirst: z.enum(['front', 'rear', 'gross']),
  /** what is exceeded: a plate, or the limit the card gives for the rack */
  over: z.array(z.enum(LOAD_LIMITS)),
  /** centre of mass, rearwards from the front axle */
  centreM: z.number(),
  /** what stands behind the body, where a rack is fitted */
  rack: z
    .strictObject({
      onKg: z.number(),
      limitKg: z.number(),
      spareKg: z.number(),
      limitFrom: z.enum(['card', 'common practice']),
    })
    .optional(),
  /** the empty weight was not weighed axle by axle: what each axle carries is an estimate */
  estimated: z.literal(true).optional(),
  /** nor as a whole: the gross mass is an estimate too */
  grossEstimated: z.literal(true).optional(),
});
export type LoadFigures = z.infer<typeof loadFiguresSchema>;
