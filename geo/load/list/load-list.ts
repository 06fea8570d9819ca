import { z } from 'zod';
import { ITEM_KG_MOST, ITEM_LITRES_MOST, ITEM_NAME_LONGEST, ITEM_X_MOST_M, ITEMS_MAX } from './bounds.ts';
import { ITEM_KINDS } from './item-kind.ts';

/**
 * One item on board. Kilograms; metres rearwards from the front axle, negative ahead of it, beyond the wheelbase
 * behind the rear axle. A negative mass is something taken off that the empty vehicle, ready to drive, holds.
 */
const loadItemSchema = z.strictObject({
  name: z.string().max(ITEM_NAME_LONGEST).regex(/\S/),
  massKg: z.number().min(-ITEM_KG_MOST).max(ITEM_KG_MOST),
  xM: z.number().min(-ITEM_X_MOST_M).max(ITEM_X_MOST_M),
  // the rest lets a list be edited again; massKg and xM decide
  kind: z.enum(ITEM_KINDS).optional(),
  /** name of the seat, tank or locker of the card it stands at, `rack` for the rack */
  place: z.string().min(1).max(100).optional(),
  litres: z.number().min(0).max(ITEM_LITRES_MOST).optional(),
});
export type LoadItem = z.infer<typeof loadItemSchema>;

/**
 * What is on board beyond the empty vehicle, ready to drive, format `lanegauge.load` version 1. Unknown fields are
 * refused by name.
 */
export const loadListSchema = z.strictObject({
  format: z.literal('lanegauge.load'),
  version: z.literal(1),
  items: z.array(loadItemSchema).max(ITEMS_MAX),
});
export type LoadList = z.infer<typeof loadListSchema>;
