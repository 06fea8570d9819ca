import { z } from 'zod';

const bytes = z.number().min(0);
const metres = z.strictObject({ fromM: z.number(), toM: z.number() });

/** What would be asked of whom to fetch the roads along a drive's line. Nothing has been sent when this is shown. */
const linePlanSchema = z.strictObject({
  by: z.literal('line'),
  host: z.string(),
  queries: z.number(),
  bytes,
  seconds: z.number(),
  /** what is sent, and what it tells whoever runs the server: sentences */
  say: z.array(z.string()),
  /** how much this computer asked of that server today */
  today: z.strictObject({ queries: z.number(), bytes }),
});

/** The next step of fetching whole regions; each waits for a yes of its own. */
const regionPlanSchema = z.strictObject({
  by: z.literal('region'),
  host: z.string(),
  /** the list of regions; the sizes of some; the maps themselves; no region holds any of the drive */
  step: z.enum(['index', 'sizes', 'maps', 'none']),
  say: z.array(z.string()),
  /** what is asked about or fetched in this step */
  regions: z.array(z.strictObject({ id: z.string(), name: z.string(), bytes: bytes.optional() })),
  /** of this step */
  bytes: bytes.optional(),
  seconds: z.number().optional(),
});

export const fetchPlanSchema = z.discriminatedUnion('by', [linePlanSchema, regionPlanSchema]);
export type FetchPlan = z.infer<typeof fetchPlanSchema>;

/** What became of a step: the next one, or maps on the shelf. */
export const fetchedSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('plan'), plan: fetchPlanSchema }),
  z.strictObject({
    kind: z.literal('maps'),
    /** names on the shelf */
    maps: z.array(z.string()),
    /** stretches of the line that could not be had, metres along it */
    lacking: z.array(metres),
    /** sentences: what was not asked, what is old */
    notes: z.array(z.string()),
  }),
]);
export type Fetched = z.infer<typeof fetchedSchema>;
