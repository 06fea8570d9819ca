import { z } from 'zod';
import { servicesFoundSchema } from '../../geo/day/service.ts';
import { noWayRoundSchema, wayRoundSchema } from '../../geo/report/way-round.ts';
import { SERVICE_KINDS } from '../../geo/services/kinds.ts';
import { NAME_KINDS } from '../../geo/shelf/names.ts';
import { checkRequestSchema } from './check-request.ts';
import { followedDriveSchema } from './followed-drive.ts';
import { PREFER } from './settings.ts';
import { workSchema } from './work.ts';

/** More places than this nobody drives to in one go. */
const PLACES_MAX = 100;

const driveId = z.string().max(64);
const prefer = z.enum(PREFER);
const degrees = { lat: z.number().min(-90).max(90), lon: z.number().min(-180).max(180) };

/** The calls about ways round and drives laid out anew. */
export const WAY_ROUND_CALLS = {
  /** Ways past what bars an open drive, or also past the findings named. */
  wayRound: {
    request: checkRequestSchema.extend({
      past: z.array(z.string().max(400)).max(100).optional(),
      prefer: prefer.optional(),
    }),
    progress: workSchema,
    value: z.strictObject({
      waysRound: z.array(wayRoundSchema),
      noWayRound: z.array(noWayRoundSchema),
      /** whether roads further off can be had, where the map that was read ends too near: by fetching */
      wider: z.enum(['fetch', 'none']),
    }),
  },
  /**
   * Opens the drive with a stretch of it replaced by a way: a drive of its own under its own id. The one before stays
   * open, so that it can be gone back to.
   */
  takeWay: {
    request: z.strictObject({
      driveId,
      fromM: z.number().min(0),
      toM: z.number().min(0),
      path: z
        .array(z.tuple([degrees.lat, degrees.lon]))
        .min(1)
        .max(200_000),
    }),
    progress: workSchema,
    value: followedDriveSchema,
  },
  /**
   * Lays out a drive anew for a vehicle, on the open map: it becomes an open drive of its own.
   * A place is a stop unless it only leads the line.
   */
  planDrive: {
    request: checkRequestSchema.omit({ driveId: true }).extend({
      places: z
        .array(z.strictObject({ ...degrees, stop: z.boolean().optional() }))
        .min(2)
        .max(PLACES_MAX),
      name: z.string().max(200).optional(),
      prefer: prefer.optional(),
    }),
    progress: workSchema,
    value: z.strictObject({
      drive: followedDriveSchema,
      /** what there is to say of where places were put on roads */
      say: z.array(z.string()),
    }),
  },
  /** Places near an open drive where its vehicle can see to its tanks, each with a way there and back. */
  services: {
    request: checkRequestSchema.extend({
      wanted: z.array(z.enum(SERVICE_KINDS)).min(1).max(SERVICE_KINDS.length),
      prefer: prefer.optional(),
    }),
    progress: workSchema,
    value: servicesFoundSchema.extend({ say: z.array(z.string()) }),
  },
  /** Names that begin with a text, on the open map, else on the shelf: places, roads, sites. */
  findPlaces: {
    request: z.strictObject({
      text: z.string().max(100),
      near: z.strictObject(degrees).optional(),
    }),
    progress: z.never(),
    value: z.strictObject({
      /** where there is none: names that a misspelt one was likely meant to be */
      meant: z.array(z.string()).optional(),
      /** of which maps names could not all be looked up, and what to do */
      notSearched: z.string().optional(),
      /** so many of the first may be meant: called just so, and a town of that name before all else */
      exact: z.number(),
      places: z.array(
        z.strictObject({
          name: z.string(),
          kind: z.enum(NAME_KINDS),
          /** what it is, in plain words: town, street, campsite */
          what: z.string(),
          /** how far from which town or village: what tells it from others of its name */
          where: z.string().optional(),
          ...degrees,
        }),
      ),
    }),
  },
} as const;
