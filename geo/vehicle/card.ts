import { z } from 'zod';
import { quote } from '../units/text.ts';
import {
  CARD_BOUNDS as B,
  type Bounds,
  CARD_NAME_LONGEST,
  NOTES_LONGEST,
  PLACE_BOUNDS,
  PLACE_NAME_LONGEST,
  PLACES_MAX,
  YARD_BOUNDS as Y,
} from './bounds.ts';
import { LIQUIDS } from './liquids.ts';
import { measureFaults } from './lock/measured-lock.ts';
import { sayMeasureFault } from './lock/say-measure-fault.ts';
import { nameFault } from './place-names.ts';
import { saySizeFault, sizeFaults } from './size-faults.ts';

const figure = ({ least, most }: Bounds) => z.number().min(least).max(most);

const rackSchema = z.strictObject({
  lengthM: figure(B.rackLengthM),
  widthM: figure(B.rackWidthM),
  fitted: z.boolean(),
  limitKg: figure(B.rackLimitKg).optional(),
});

const placeName = z.string().max(PLACE_NAME_LONGEST).regex(/\S/);
/** metres rearwards from the front axle, negative ahead of it */
const placeX = figure(PLACE_BOUNDS.xM);

const seatSchema = z.strictObject({ name: placeName, xM: placeX });
const tankSchema = z.strictObject({
  name: placeName,
  holds: z.enum(LIQUIDS),
  xM: placeX,
  capacityL: figure(PLACE_BOUNDS.capacityL),
});
const lockerSchema = z.strictObject({
  name: placeName,
  xM: placeX,
  limitKg: figure(PLACE_BOUNDS.limitKg).optional(),
});

/** Metres; a tape or a mark may be off by so much either way. `on` is the day, `by` the initials. */
const measuredSchema = z
  .strictObject({
    /** the inner rear tyre's chalked circle, straight across */
    rearWheelCircleM: figure(Y.rearWheelCircleM).optional(),
    /** how far outside the line of the side the tail's farthest mark lay, pulling away from straight */
    tailOutM: figure(Y.tailOutM).optional(),
    /** how far ahead of where the rear axle stood that mark lay, behind it negative */
    tailAheadM: figure(Y.tailAheadM).optional(),
    /** the card's rack was on */
    withRack: z.boolean().optional(),
    tapeOffM: figure(Y.tapeOffM).optional(),
    chalkOffM: figure(Y.chalkOffM).optional(),
    on: z
      .string()
      .regex(/^\d{4}-\d\d-\d\d$/)
      .optional(),
    by: z.string().min(1).max(6).optional(),
  })
  .refine(({ rearWheelCircleM, tailOutM }) => rearWheelCircleM !== undefined || tailOutM !== undefined, {
    message: 'neither the circle of the inner rear wheel nor the swing of the tail is there',
  });

/**
 * One vehicle's sizes, plates and fittings, format `lanegauge.vehicle` version 1. Metres and kilograms.
 * Unknown fields are refused by name: a misspelt size must not vanish.
 */
export const vehicleCardSchema = z
  .strictObject({
    format: z.literal('lanegauge.vehicle'),
    version: z.literal(1),
    name: z.string().min(1).max(CARD_NAME_LONGEST),
    /** highest fixed point as measured */
    heightM: figure(B.heightM),
    /** body, without mirrors */
    widthM: figure(B.widthM),
    widthMirrorsM: figure(B.widthMirrorsM),
    widthMirrorsFoldedM: figure(B.widthMirrorsFoldedM).optional(),
    /** body, without a rack */
    lengthM: figure(B.lengthM),
    wheelbaseM: figure(B.wheelbaseM),
    frontOverhangM: figure(B.frontOverhangM),
    rearOverhangM: figure(B.rearOverhangM),
    rack: rackSchema.optional(),
    /** kerb to kerb, diameter */
    turningCircleM: figure(B.turningCircleM).optional(),
    turningCircleWallM: figure(B.turningCircleWallM).optional(),
    rearAxleRadiusMinM: figure(B.rearAxleRadiusMinM).optional(),
    trackM: figure(B.trackM).optional(),
    /** what chalk and tape told in the yard, at full lock; it counts before every other figure of the turning */
    measured: measuredSchema.optional(),
    grossKg: figure(B.grossKg),
    axleKg: z.strictObject({ front: figure(B.axleFrontKg), rear: figure(B.axleRearKg) }),
    unladenKg: figure(B.unladenKg).optional(),
    /** the empty weight, ready to drive, axle by axle */
    runningOrder: z
      .strictObject({
        frontKg: figure(B.emptyFrontKg),
        rearKg: figure(B.emptyRearKg),
        includesDriver: z.boolean(),
        includesFreshWater: z.boolean(),
      })
      .optional(),
    rearClearanceM: figure(B.rearClearanceM).optional(),
    bellyClearanceM: figure(B.bellyClearanceM).optional(),
    gasKg: figure(B.gasKg).optional(),
    /** where people, liquids and things go, for the load; each place has a name of its own */
    seats: z.array(seatSchema).max(PLACES_MAX).optional(),
    tanks: z.array(tankSchema).max(PLACES_MAX).optional(),
    lockers: z.array(lockerSchema).max(PLACES_MAX).optional(),
    notes: z.string().max(NOTES_LONGEST).optional(),
  })
  .superRefine((card, context) => {
    const refuse = (path: (string | number)[], message: string) =>
      context.addIssue({ code: 'custom', path, message });
    for (const fault of sizeFaults(card)) refuse([fault.field], saySizeFault(fault));
    for (const fault of measureFaults(card)) refuse(['measured', fault.field], sayMeasureFault(fault));
    const named = new Set<string>();
    for (const kind of ['seats', 'tanks', 'lockers'] as const)
      for (const [index, { name }] of (card[kind] ?? []).entries()) {
        const fault = nameFault(name, named);
        if (fault === 'taken')
          refuse([kind, index, 'name'], `${quote(name, 40)} is the name of another place`);
        else if (fault) refuse([kind, index, 'name'], `${quote(name)} is the rack's own name`);
        named.add(name);
      }
  });

export type VehicleCard = z.infer<typeof vehicleCardSchema>;
export type Measured = z.infer<typeof measuredSchema>;
export type Seat = z.infer<typeof seatSchema>;
export type Tank = z.infer<typeof tankSchema>;
