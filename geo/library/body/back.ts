import { z } from 'zod';

/** That the vehicle of a sheet is back. Without a day it was told by mistake, and the sheet is out. */
export const backBodySchema = z.looseObject({
  /** the sheet number */
  number: z.string().min(1).max(20),
  /** YYYY-MM-DD */
  on: z
    .string()
    .regex(/^\d{4}-\d\d-\d\d$/)
    .optional(),
});

/** The id of what is kept of a sheet's return. @param number the sheet's */
export function backId(number: string): string {
  return `back-${number.toLowerCase()}`;
}
