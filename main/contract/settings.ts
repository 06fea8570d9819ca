import { z } from 'zod';
import { LOAD_MARGIN_KG } from '../../geo/load/weigh/load-level.ts';
import { UNITS } from '../../geo/units/in-units.ts';
import { NO_FIRM } from './hand-over/no-firm.ts';
import { BEFORE_MAX, FIRM_MAX, LOAD_MARGIN_MAX_KG, MARGIN_MAX_M, PLAN_PLACES_MAX } from './limits.ts';
import { isServerAddress, PUBLIC_SERVERS } from './server-address.ts';
import { tileOrigin } from './tile-address.ts';

const margin = z.number().min(0).max(MARGIN_MAX_M);

/** An address of raster tiles as the user enters it: https, with the three placeholders. */
const tileAddress = z
  .string()
  .max(500)
  .refine((text) => tileOrigin(text) !== undefined, {
    message: 'a tile address starts with https:// and contains {z}, {x} and {y}',
  });

const serverAddress = z.string().max(500).refine(isServerAddress, {
  message: "a server's address starts with https:// or http:// and holds no password",
});

/** The views of the window. */
const VIEW_IDS = ['yard', 'drive', 'swing', 'load'] as const;

export const PREFER = ['quickest', 'widest'] as const;

/** A place of a plan as it is kept: without a name where it was put on the map. */
const keptPlaceSchema = z.strictObject({
  lat: z.number().min(-90).max(90),
  lon: z.number().min(-180).max(180),
  name: z.string().max(300).optional(),
  /** what it is, in plain words, where it was chosen by name */
  what: z.string().max(100).optional(),
  stop: z.boolean(),
});
export type KeptPlace = z.infer<typeof keptPlaceSchema>;

/** What the user has chosen, format `lanegauge.settings` version 1. */
export const settingsSchema = z.strictObject({
  format: z.literal('lanegauge.settings'),
  version: z.literal(1),
  units: z.enum(UNITS),
  palette: z.enum(['system', 'day', 'night']),
  /** spare asked for before a passage counts as free, metres */
  margins: z.strictObject({ heightM: margin, physicalWidthM: margin }),
  /** what is to be left on each plate for a load not to be called tight, kilograms */
  loadMarginKg: z.number().min(0).max(LOAD_MARGIN_MAX_KG).default(LOAD_MARGIN_KG),
  /** ISO 3166-1 alpha-2, for places that do not tell */
  country: z
    .string()
    .regex(/^[A-Z]{2}$/)
    .nullable(),
  /** the vehicle last chosen */
  vehicleId: z.string().max(64).nullable(),
  /** optional background picture; off by default, since it needs the network */
  tiles: z.strictObject({ address: tileAddress, attribution: z.string().max(300) }).nullable(),
  /** who is asked for maps, once the user has agreed to it: along a drive, and by region */
  servers: z.strictObject({ line: serverAddress, region: serverAddress }).default(PUBLIC_SERVERS),
  /** what stands at the head of a drive sheet, and the telephone that its driver rings; '' where none is set */
  firm: z
    .strictObject({
      heading: z.string().max(FIRM_MAX.heading),
      telephone: z.string().max(FIRM_MAX.telephone),
    })
    .default(NO_FIRM),
  /** what is seen to before setting off; null: the program's own list */
  before: z.array(z.string().max(BEFORE_MAX.letters)).max(BEFORE_MAX.lines).nullable().default(null),
  /** which roads a way round or a drive laid out anew should take */
  prefer: z.enum(PREFER).default('quickest'),
  /** where the user left: the view, the drive of the library that was open in it, and what was being planned */
  left: z
    .strictObject({
      view: z.enum(VIEW_IDS),
      drive: z.strictObject({ id: z.string().min(1).max(100), track: z.int().min(1) }).nullable(),
      /** the places of a plan that is in no file of the user's */
      plan: z.array(keptPlaceSchema).max(PLAN_PLACES_MAX).optional(),
    })
    .nullable()
    .default(null),
});
export type Settings = z.infer<typeof settingsSchema>;
