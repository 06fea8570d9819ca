import { z } from 'zod';

const size = (max: number) => z.number().positive().max(max);

const rackSchema = z.strictObject({
  lengthM: size(3),
  widthM: size(4),
  fitted: z.boolean(),
  limitKg: z.number().positive().max(1000).optional(),
});

/** How far the three parts of the length may miss the whole: a centimetre of reading on each measurement. */
const LENGTH_SUM_TOLERANCE_M = 0.02;

/**
 * One vehicle's sizes, plates and fittings, format `lanegauge.vehicle` version 1. Metres and kilograms.
 * Unknown fields are refused by name: a misspelt size must not vanish.
 */
export const vehicleCardSchema = z
  .strictObject({
    format: z.literal('lanegauge.vehicle'),
    version: z.literal(1),
    name: z.string().min(1).max(200),
    /** highest fixed point as measured */
    heightM: size(5),
    /** body, without mirrors */
    widthM: size(4),
    widthMirrorsM: size(5),
    widthMirrorsFoldedM: size(5).optional(),
    /** body, without a rack */
    lengthM: size(20),
    wheelbaseM: size(15),
    frontOverhangM: z.number().nonnegative().max(5),
    rearOverhangM: z.number().nonnegative().max(8),
    rack: rackSchema.optional(),
    /** kerb to kerb, diameter */
    turningCircleM: size(50).optional(),
    turningCircleWallM: size(50).optional(),
    rearAxleRadiusMinM: size(30).optional(),
    trackM: size(4).optional(),
    grossKg: z.number().positive().max(60_000),
    axleKg: z.strictObject({
      front: z.number().positive().max(30_000),
      rear: z.number().positive().max(30_000),
    }),
    unladenKg: z.number().positive().max(60_000).optional(),
    runningOrder: z
      .strictObject({
        frontKg: z.number().positive(),
        rearKg: z.number().positive(),
        includesDriver: z.boolean(),
        includesFreshWater: z.boolean(),
      })
      .optional(),
    rearClearanceM: size(2).optional(),
    bellyClearanceM: size(2).optional(),
    gasKg: z.number().nonnegative().max(1000).optional(),
    notes: z.string().max(4000).optional(),
  })
  .superRefine((card, context) => {
    const sum = card.frontOverhangM + card.wheelbaseM + card.rearOverhangM;
    if (Math.abs(sum - card.lengthM) > LENGTH_SUM_TOLERANCE_M + 1e-9)
      context.addIssue({
        code: 'custom',
        path: ['lengthM'],
        message: `frontOverhangM + wheelbaseM + rearOverhangM is ${sum.toFixed(3)} m, but lengthM is ${card.lengthM.toFixed(3)} m; measure again, they must agree within ${LENGTH_SUM_TOLERANCE_M} m`,
      });
    if (card.widthMirrorsM < card.widthM)
      context.addIssue({
        code: 'custom',
        path: ['widthMirrorsM'],
        message: `the width over the mirrors (${card.widthMirrorsM} m) is less than the body (${card.widthM} m)`,
      });
    if (card.widthMirrorsFoldedM !== undefined && card.widthMirrorsFoldedM > card.widthMirrorsM)
      context.addIssue({
        code: 'custom',
        path: ['widthMirrorsFoldedM'],
        message: 'the folded mirrors are wider than the unfolded ones',
      });
  });

export type VehicleCard = z.infer<typeof vehicleCardSchema>;
