import { z } from 'zod';
import { LIQUIDS } from './liquids.ts';
import { circleFault } from './turning-circle.ts';

/** A figure outside what any motorhome has is a slip (centimetres, tonnes, a lost digit) and would clear every bridge. */
const size = (min: number, max: number) => z.number().min(min).max(max);

const rackSchema = z.strictObject({
  lengthM: size(0.1, 3),
  widthM: size(0.1, 4),
  fitted: z.boolean(),
  limitKg: size(1, 1000).optional(),
});

/** More of a kind no motorhome has. */
const PLACES_MAX = 30;
const placeName = z.string().max(100).regex(/\S/);
/** metres rearwards from the front axle, negative ahead of it */
const placeX = z.number().min(-5).max(20);

const seatSchema = z.strictObject({ name: placeName, xM: placeX });
const tankSchema = z.strictObject({
  name: placeName,
  holds: z.enum(LIQUIDS),
  xM: placeX,
  capacityL: size(1, 2000),
});
const lockerSchema = z.strictObject({ name: placeName, xM: placeX, limitKg: size(1, 2000).optional() });

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
    heightM: size(1.5, 5),
    /** body, without mirrors */
    widthM: size(1, 4),
    widthMirrorsM: size(1, 5),
    widthMirrorsFoldedM: size(1, 5).optional(),
    /** body, without a rack */
    lengthM: size(2.5, 20),
    wheelbaseM: size(1, 15),
    frontOverhangM: z.number().nonnegative().max(5),
    rearOverhangM: z.number().nonnegative().max(8),
    rack: rackSchema.optional(),
    /** kerb to kerb, diameter */
    turningCircleM: size(4, 50).optional(),
    turningCircleWallM: size(4, 50).optional(),
    rearAxleRadiusMinM: size(1, 30).optional(),
    trackM: size(0.8, 4).optional(),
    grossKg: size(500, 60_000),
    axleKg: z.strictObject({
      front: size(200, 30_000),
      rear: size(200, 30_000),
    }),
    unladenKg: size(300, 60_000).optional(),
    runningOrder: z
      .strictObject({
        frontKg: size(100, 30_000),
        rearKg: size(100, 30_000),
        includesDriver: z.boolean(),
        includesFreshWater: z.boolean(),
      })
      .optional(),
    rearClearanceM: size(0.02, 2).optional(),
    bellyClearanceM: size(0.02, 2).optional(),
    gasKg: z.number().nonnegative().max(1000).optional(),
    /** where people, liquids and things go, for the load; each place has a name of its own */
    seats: z.array(seatSchema).max(PLACES_MAX).optional(),
    tanks: z.array(tankSchema).max(PLACES_MAX).optional(),
    lockers: z.array(lockerSchema).max(PLACES_MAX).optional(),
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
    for (const key of ['turningCircleM', 'turningCircleWallM'] as const) {
      const circleM = card[key];
      const aheadM = card.wheelbaseM + (key === 'turningCircleWallM' ? card.frontOverhangM : 0);
      const fault = circleM === undefined ? undefined : circleFault(circleM, aheadM, card.wheelbaseM);
      if (fault !== undefined) context.addIssue({ code: 'custom', path: [key], message: fault });
    }
    const named = new Set<string>();
    for (const kind of ['seats', 'tanks', 'lockers'] as const)
      for (const [index, { name }] of (card[kind] ?? []).entries()) {
        if (named.has(name) || name.toLowerCase() === 'rack')
          context.addIssue({
            code: 'custom',
            path: [kind, index, 'name'],
            message: named.has(name)
              ? `"${name.slice(0, 40)}" is the name of another place`
              : `"${name}" is the rack's own name`,
          });
        named.add(name);
      }
  });

export type VehicleCard = z.infer<typeof vehicleCardSchema>;
export type Seat = z.infer<typeof seatSchema>;
export type Tank = z.infer<typeof tankSchema>;
