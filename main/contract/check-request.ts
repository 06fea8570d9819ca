import { z } from 'zod';
import { dayPlanSchema } from '../../geo/day/plan.ts';
import { loadListSchema } from '../../geo/load/list/load-list.ts';
import { vehicleCardSchema } from '../../geo/vehicle/card.ts';
import { LEAVE_AT } from './leave-at.ts';
import { settingsSchema } from './settings.ts';

/** An open drive held against a vehicle: what a check is made of. */
export const checkRequestSchema = z.strictObject({
  driveId: z.string().max(64),
  vehicle: vehicleCardSchema,
  /** what is on board; the card must give its empty weight */
  load: loadListSchema.optional(),
  leaveAt: z.string().regex(LEAVE_AT).optional(),
  margins: settingsSchema.shape.margins.optional(),
  /** what the sentences are in */
  units: settingsSchema.shape.units.optional(),
  /** stops with their stay, and the return hour */
  day: dayPlanSchema.optional(),
  /** ISO 3166-1 alpha-2 */
  country: z
    .string()
    .regex(/^[A-Z]{2}$/)
    .optional(),
});
