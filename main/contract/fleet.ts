import { z } from 'zod';
import { vehicleCardSchema } from '../../geo/vehicle/card.ts';
import { FLEET_MAX } from './limits.ts';

export const vehicleIdSchema = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/);

/** One vehicle of the fleet: its card under a name of ours that outlives a renaming. */
export const fleetVehicleSchema = z.strictObject({ id: vehicleIdSchema, card: vehicleCardSchema });
export type FleetVehicle = z.infer<typeof fleetVehicleSchema>;

export const vehiclesSchema = z
  .array(fleetVehicleSchema)
  .max(FLEET_MAX)
  .refine((vehicles) => new Set(vehicles.map(({ id }) => id)).size === vehicles.length, {
    message: 'two vehicles carry the same id',
  });

/** The fleet's file, format `lanegauge.fleet` version 1. */
export const fleetFileSchema = z.strictObject({
  format: z.literal('lanegauge.fleet'),
  version: z.literal(1),
  vehicles: vehiclesSchema,
});
