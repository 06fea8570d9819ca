import { z } from 'zod';
import { loadFiguresSchema } from './weigh/figures.ts';

/** A vehicle as loaded, as reports and the terminal give it: the figures, and every doubt in words. */
export const loadResultSchema = z.strictObject({
  ...loadFiguresSchema.shape,
  /** what is wrong or doubtful, in words */
  warnings: z.array(z.string()),
  /** what was counted and how, in words */
  notes: z.array(z.string()),
});
export type LoadResult = z.infer<typeof loadResultSchema>;
