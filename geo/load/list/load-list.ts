import { z } from 'zod';
import { ITEM_KINDS } from './item-kind.ts';

/** A list this long was made by a program. */
export const ITEMS_MAX = 300;

/**
 * One item on board. Kilograms; metres rearwards from the front axle, negative ahead of it, beyond the wheelbase
 * behind the rear axle. A negative mass is something taken off that the running order holds.
 */
const loadItemSchema = z.strictObject({
  name: z.string().max(200).regex(/\S/),
  massKg: z.number().min(-20_000).max(20_000),
  xM: z.number().min(-20).max(20),
  // the rest lets a list be edited again; massKg and xM decide
  kind: z.enum(ITEM_KINDS).optional(),
  /** name of the seat, tank or locker of the card it stands at, `rack` for the rack */
  place: z.string().min(1).max(100).optional(),
  litres: z.number().min(0).max(5000).optional(),
});
export type LoadItem = z.infer<typeof loadItemSchema>;

/** What is on board beyond the running order, format `lanegauge.load` version 1. Unknown fields are refused by name. */
export const loadListSchema = z.strictObject({
  format: z.literal('lanegauge.load'),
  version: z.literal(1),
  items: z.array(loadItemSchema).max(ITEMS_MAX),
});
export type LoadList = z.infer<typeof loadListSchema>;
