import { z } from 'zod';

const span = z.strictObject({ fromM: z.number(), toM: z.number() });
const place = z.strictObject({ lat: z.number(), lon: z.number() });

export const mapSummarySchema = z.strictObject({
  name: z.string(),
  sources: z.array(z.strictObject({ name: z.string(), sha256: z.string(), dataDate: z.string().optional() })),
  /** driven ways: roads and ferries */
  roads: z.number(),
  /** degrees; null for a map without a single road */
  bounds: z
    .strictObject({ south: z.number(), west: z.number(), north: z.number(), east: z.number() })
    .nullable(),
  center: place.nullable(),
  notes: z.array(z.string()),
});
export type MapSummary = z.infer<typeof mapSummarySchema>;

/** Positions of one leg: latitude and longitude in turn, degrees; `alongM` has one entry per position. */
const line = { line: z.array(z.number()), alongM: z.array(z.number()) };

const legViewSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('stretch'),
    fromM: z.number(),
    toM: z.number(),
    /** OSM id */
    way: z.number(),
    forward: z.boolean(),
    class: z.string(),
    name: z.string().optional(),
    ref: z.string().optional(),
    ...line,
  }),
  z.strictObject({ kind: z.literal('offMap'), fromM: z.number(), toM: z.number(), ...line }),
  /** a break between two segments of the file: not driven */
  z.strictObject({ kind: z.literal('gap'), fromM: z.number(), toM: z.number(), ...line }),
]);
export type LegView = z.infer<typeof legViewSchema>;

const trackSchema = z.strictObject({
  kind: z.enum(['track', 'route']),
  /** 1-based among its kind */
  number: z.number(),
  name: z.string(),
  positions: z.number(),
});

export const driveViewSchema = z.strictObject({
  driveId: z.string(),
  name: z.string(),
  /** file name only */
  file: z.string(),
  /** all that the file holds, and the one taken */
  tracks: z.array(trackSchema),
  /** 1-based place among `tracks` */
  taken: z.number(),
  lengthM: z.number(),
  legs: z.array(legViewSchema),
  guessed: z.array(span),
  doubtful: z.array(span),
  match: z.strictObject({ drivenM: z.number(), offMapM: z.number(), guessedM: z.number() }),
  notes: z.array(z.string()),
});
export type DriveView = z.infer<typeof driveViewSchema>;
