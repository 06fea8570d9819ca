import { z } from 'zod';
import { findingSchema } from './finding.ts';
import { ALL_KINDS, SUBJECTS } from './kinds.ts';

const findingIds = z.array(z.string()).min(1);

/** A legal way past one bar of a drive or several, itself checked with the whole trip. */
export const wayRoundSchema = z.strictObject({
  /** findings of the report that it passes; each lies within fromM … toM */
  findingIds,
  /** metres along the drive: where it leaves it, and is on it again */
  fromM: z.number(),
  toM: z.number(),
  /** of the way itself */
  lengthM: z.number(),
  /** against the drive's own stretch; may be negative */
  extraM: z.number(),
  extraS: z.number(),
  /** in order, as in report.roads; metres along the way */
  roads: z.array(
    z.strictObject({
      way: z.number(),
      forward: z.boolean(),
      fromM: z.number().optional(),
      toM: z.number().optional(),
      name: z.string().optional(),
      ref: z.string().optional(),
    }),
  ),
  /** latitude and longitude of every node passed, and of both ends */
  path: z.array(z.tuple([z.number(), z.number()])),
  verdict: z.enum(['tight', 'unknown', 'care', 'clear']),
  counts: z.strictObject({
    barred: z.literal(0),
    tight: z.number(),
    unknown: z.number(),
    care: z.number(),
  }),
  /** the least room to spare on it */
  tightest: z
    .strictObject({
      subject: z.enum(SUBJECTS),
      kind: z.enum(ALL_KINDS),
      spare: z.number(),
      unit: z.string(),
      say: z.string(),
    })
    .optional(),
  /** metres along the way */
  findings: z.array(findingSchema),
});
export type WayRound = z.infer<typeof wayRoundSchema>;

/** Why no way round is told: what stops it, gravest first to look into. */
export const NO_WAY_KINDS = [
  'limits',
  'cut off',
  'edge of the map',
  'no room to turn',
  'start or end barred',
] as const;

export const noWayRoundSchema = z.strictObject({
  findingIds,
  kind: z.enum(NO_WAY_KINDS),
  why: z.string(),
  /** the least set that would have to give */
  gives: z
    .array(
      z.strictObject({
        /** `vehicle`: a rack taken off, water drained */
        of: z.enum(['road', 'vehicle']),
        osm: z.array(z.strictObject({ type: z.enum(['node', 'way', 'relation']), id: z.number() })),
        subject: z.enum(SUBJECTS),
        spare: z.number().optional(),
        unit: z.enum(['m', 'kg']).optional(),
        say: z.string(),
      }),
    )
    .optional(),
});
export type NoWayRound = z.infer<typeof noWayRoundSchema>;
