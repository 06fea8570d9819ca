import { z } from 'zod';
import { ZOOM_MAX } from '../../geo/basemap/features.ts';
import { dayPlanSchema } from '../../geo/day/plan.ts';
import { loadListSchema } from '../../geo/load/list/load-list.ts';
import { driveReportSchema } from '../../geo/report/report.ts';
import { vehicleCardSchema } from '../../geo/vehicle/card.ts';
import { checkRequestSchema } from './check-request.ts';
import { descriptionSchema } from './description.ts';
import { vehicleIdSchema, vehiclesSchema } from './fleet.ts';
import { followedDriveSchema } from './followed-drive.ts';
import { HAND_OVER_CALLS } from './hand-over/hand-over-calls.ts';
import { LEAVE_AT } from './leave-at.ts';
import { LOAD_MAX_BYTES, RECENTS_MAX } from './limits.ts';
import { mapChangesSchema } from './map-changes.ts';
import { mapSummarySchema } from './map-summary.ts';
import { NOTE_CALLS } from './note-calls.ts';
import { settingsSchema } from './settings.ts';
import { SHELF_CALLS } from './shelf-calls.ts';
import { addedFileSchema, recentSchema, sourceSchema } from './source.ts';
import { stripSchema } from './strip.ts';
import { tileSchema } from './tile.ts';
import { WAY_ROUND_CALLS } from './way-round-calls.ts';
import { workSchema } from './work.ts';
import { YARD_CALLS } from './yard/yard-calls.ts';

const empty = z.strictObject({});
const driveId = z.string().max(64);
const nothing = z.never();
/** what another window had saved meanwhile and what became of it, one sentence each */
const say = z.array(z.string());
/** ISO 3166-1 alpha-2 */
const countryCode = z.string().regex(/^[A-Z]{2}$/);

/** What a watching page hears. */
const watchSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('heartbeat') }),
  z.strictObject({ kind: z.literal('opened'), file: addedFileSchema }),
  /** something the user should know: a sentence */
  z.strictObject({ kind: z.literal('notice'), say: z.string() }),
]);
export type WatchNews = z.infer<typeof watchSchema>;

/**
 * Everything the page may ask of its host: request, progress and reply are plain JSON.
 * Opening, saving and printing are the page's own doing and stand in no call.
 */
export const CALLS = {
  describe: { request: empty, progress: nothing, value: descriptionSchema },
  /** Reads a map and makes it the one that drives are followed on. With a drive, only what lies about it is kept. */
  openMap: {
    request: z.strictObject({ source: sourceSchema, about: sourceSchema.optional() }),
    progress: workSchema,
    value: mapSummarySchema,
  },
  /** Reads a drive and follows it on the open map. */
  openDrive: {
    request: z.strictObject({
      source: sourceSchema,
      /** 1-based place among the file's `tracks`; without it the first that can be driven */
      track: z.int().min(1).optional(),
    }),
    progress: workSchema,
    value: followedDriveSchema,
  },
  /** Holds an open drive against a vehicle; nothing is matched again. */
  check: {
    request: checkRequestSchema,
    progress: nothing,
    value: driveReportSchema,
  },
  /** What of the open map is drawn on one square of the base map. */
  tile: {
    request: z.strictObject({ z: z.int().min(0).max(ZOOM_MAX), x: z.int().min(0), y: z.int().min(0) }),
    progress: nothing,
    value: tileSchema,
  },
  /** An open drive unrolled, for the strip map. */
  strip: {
    request: z.strictObject({ driveId, country: countryCode.optional() }),
    progress: nothing,
    value: stripSchema,
  },
  /**
   * Keeps a change of the fleet. With `known`, what it was made from, it is brought together with what another window
   * has saved meanwhile: what comes back is what is kept.
   */
  saveVehicles: {
    request: z.strictObject({ vehicles: vehiclesSchema, known: vehiclesSchema.optional() }),
    progress: nothing,
    value: z.strictObject({ vehicles: vehiclesSchema, say }),
  },
  /** Keeps what is aboard a vehicle; an empty list is forgotten. */
  saveLoad: {
    request: z.strictObject({
      vehicleId: vehicleIdSchema,
      load: loadListSchema,
      known: loadListSchema.optional(),
    }),
    progress: nothing,
    value: z.strictObject({ items: loadListSchema.shape.items, say }),
  },
  /** Reads the text of a load list's file, or says what is wrong with it. */
  readLoad: {
    request: z.strictObject({ name: z.string().max(300), text: z.string().max(LOAD_MAX_BYTES) }),
    progress: nothing,
    value: loadListSchema,
  },
  saveSettings: {
    request: z.strictObject({ settings: settingsSchema, known: settingsSchema.optional() }),
    progress: nothing,
    value: z.strictObject({ settings: settingsSchema, say }),
  },
  /** Keeps the leave time chosen for an open drive, or that none is, for when the drive is opened again. */
  keepLeaveAt: {
    request: z.strictObject({ driveId, leaveAt: z.string().regex(LEAVE_AT).optional() }),
    progress: nothing,
    value: empty,
  },
  /** Keeps the day planned for an open drive, or that none is, likewise. */
  keepDay: {
    request: z.strictObject({ driveId, day: dayPlanSchema.optional() }),
    progress: nothing,
    value: empty,
  },
  /** Lists drives as opened before, without opening them; those that one of them is a later state of give way to it. */
  rememberDrives: {
    request: z.strictObject({
      sources: z.array(sourceSchema).max(RECENTS_MAX),
      insteadOf: z.array(sourceSchema).max(RECENTS_MAX).optional(),
    }),
    progress: nothing,
    value: empty,
  },
  forgetRecent: {
    request: z.strictObject({ id: recentSchema.shape.id }),
    progress: nothing,
    value: z.strictObject({ recents: z.array(recentSchema) }),
  },
  ...NOTE_CALLS,
  ...HAND_OVER_CALLS,
  ...YARD_CALLS,
  ...SHELF_CALLS,
  ...WAY_ROUND_CALLS,
  /**
   * What the last import or fetch that replaced a map changed for the drives opened before, with this vehicle: both maps
   * are read. The answer is given once; it is empty where nothing was replaced.
   */
  mapChanges: {
    request: z.strictObject({
      vehicle: vehicleCardSchema,
      margins: settingsSchema.shape.margins.optional(),
      country: countryCode.optional(),
    }),
    progress: workSchema,
    value: mapChangesSchema,
  },
  /** Stays open as long as the page does; the only way the host speaks first. */
  watch: { request: empty, progress: watchSchema, value: empty },
} as const;

export type CallName = keyof typeof CALLS;
export type RequestOf<K extends CallName> = z.infer<(typeof CALLS)[K]['request']>;
export type ProgressOf<K extends CallName> = z.infer<(typeof CALLS)[K]['progress']>;
export type ValueOf<K extends CallName> = z.infer<(typeof CALLS)[K]['value']>;
