import { z } from 'zod';

/** How far long work is; `share` is 0…1 where it is known. */
export const workSchema = z.strictObject({
  what: z.string(),
  share: z.number().min(0).max(1).optional(),
  secondsLeft: z.number().min(0).optional(),
});
export type Work = z.infer<typeof workSchema>;
