import { z } from 'zod';
import { LOCK_SOURCES } from '../vehicle/lock/full-lock.ts';

/** Sizes of a corner that the map may leave to be assumed. */
export const ASSUMED_SIZES = [
  'lane',
  'road',
  'kerb radius',
  'bend radius',
  'ring width',
  'mini-roundabout',
  'turning place',
] as const;

const roadWidths = z.strictObject({
  /** from the inner kerb line to the lane's outer edge */
  laneM: z.number(),
  /** kerb to kerb; equal to the lane on a single-track road */
  roadM: z.number(),
  from: z.enum(['tags', 'default']),
});

/** A turn met on a drive, and what this vehicle needs in it. Metres, degrees. */
export const turnSchema = z.strictObject({
  kind: z.enum(['junction', 'bend', 'roundabout', 'mini-roundabout', 'u-turn']),
  side: z.enum(['left', 'right']),
  /** how far the heading changes, always positive */
  turnDeg: z.number(),
  driveSide: z.enum(['left', 'right']),
  entry: roadWidths,
  exit: roadWidths,
  /** inner kerb's corner radius, a default by country and setting */
  kerbRadiusM: z.number(),
  /** outer diameter of a roundabout or turning place */
  circleM: z.number().optional(),
  /** radius of the road's centre line where a bend is drawn well enough to be fitted */
  bendRadiusM: z.number().optional(),
  /** the room that the largest even sweep takes; `back up`: none gets round, so it may take backing up */
  room: z.enum(['own lane', 'other lane on the exit', 'whole road', 'back up']),
  /** of the rear-axle centre in that sweep; at full lock for backing up */
  rearAxleRadiusM: z.number(),
  /** what the radius at full lock rests on: `measured` in the yard, a figure of the card, or an estimate */
  lockFrom: z.enum(LOCK_SOURCES),
  /**
   * Driven in the middle of its lane before the turn: the lane's width, from the body's side to the edge of that lane,
   * where the tail goes out, and how far the tail then goes over it. Missing where there is no such edge, as round a ring.
   */
  start: z.strictObject({ laneM: z.number(), gapM: z.number(), overM: z.number() }).optional(),
  swing: z.strictObject({
    /** the side the tail goes out to */
    side: z.enum(['left', 'right']),
    /** front axle on the arc */
    gentleM: z.number(),
    /** rear axle on the arc, and the range that the assumed widths and radius leave */
    planM: z.number(),
    planFromM: z.number(),
    planToM: z.number(),
    /** full lock from straight ahead, and its range */
    worstM: z.number(),
    worstFromM: z.number(),
    worstToM: z.number(),
  }),
  /** sizes that are not mapped, and the usual figures that stand in for them */
  assumed: z.array(
    z.strictObject({
      what: z.enum(ASSUMED_SIZES),
      m: z.number(),
      /** what is mapped of it, where that cannot be read or believed */
      insteadOf: z.string().optional(),
    }),
  ),
});
export type Turn = z.infer<typeof turnSchema>;
export type AssumedSize = Turn['assumed'][number];
