import { z } from 'zod';
import { fleetVehicleSchema } from './fleet.ts';
import { sampleLoadSchema, vehicleLoadSchema } from './loads.ts';
import { settingsSchema } from './settings.ts';
import { addedFileSchema, recentSchema } from './source.ts';

const sampleSchema = z.strictObject({
  map: z.string(),
  drives: z.array(z.strictObject({ id: z.string(), name: z.string(), says: z.string() })),
  defaultDrive: z.string(),
  /** id within the fleet as first installed */
  defaultVehicle: z.string(),
  /** the district lies at sea: what the place cannot tell */
  country: z.string(),
  load: sampleLoadSchema.optional(),
});
export type Sample = z.infer<typeof sampleSchema>;

/** What the page learns first: the program and all that is kept for the user. */
export const descriptionSchema = z.strictObject({
  program: z.string(),
  settings: settingsSchema,
  vehicles: z.array(fleetVehicleSchema),
  /** what was last aboard, of the vehicles that had anything */
  loads: z.array(vehicleLoadSchema),
  recents: z.array(recentSchema),
  sample: sampleSchema,
  /** how many maps are on the shelf */
  shelfMaps: z.number(),
  /** files named at the start, not yet shown */
  opened: z.array(addedFileSchema),
  /** sentences about what went wrong with kept files */
  notices: z.array(z.string()),
});
export type Description = z.infer<typeof descriptionSchema>;
