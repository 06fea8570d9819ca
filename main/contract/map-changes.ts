import { z } from 'zod';
import { DIFFERENCE_KINDS } from '../../geo/library/differences/difference.ts';
import { LEVELS } from '../../geo/report/level.ts';

/** What a newer map changed for one drive and the vehicle asked about. */
const driveChangesSchema = z.strictObject({
  name: z.string(),
  /** days of both maps, and what they mean: a sentence or two; or why the drive could not be compared */
  say: z.string(),
  compared: z.boolean(),
  differences: z.array(
    z.strictObject({
      kind: z.enum(DIFFERENCE_KINDS),
      /** of what is there now */
      level: z.enum(LEVELS).optional(),
      fromM: z.number(),
      say: z.string(),
    }),
  ),
});

/** What the last change of the shelf changed for the recent drives; without `drives` nothing was kept to compare with. */
export const mapChangesSchema = z.strictObject({ drives: z.array(driveChangesSchema) });
export type MapChanges = z.infer<typeof mapChangesSchema>;
