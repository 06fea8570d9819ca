import { z } from 'zod';

const margin = z.number().min(0).max(2);

/** An address of raster tiles as the user enters it: https, with the three placeholders. */
const tileAddress = z
  .string()
  .max(500)
  .refine((text) => tileOrigin(text) !== undefined, {
    message: 'a tile address starts with https:// and contains {z}, {x} and {y}',
  });

/** What the user has chosen, format `lanegauge.settings` version 1. */
export const settingsSchema = z.strictObject({
  format: z.literal('lanegauge.settings'),
  version: z.literal(1),
  units: z.enum(['metric', 'imperial', 'both']),
  palette: z.enum(['system', 'day', 'night']),
  /** spare asked for before a passage counts as free, metres */
  margins: z.strictObject({ heightM: margin, physicalWidthM: margin }),
  /** ISO 3166-1 alpha-2, for places that do not tell */
  country: z
    .string()
    .regex(/^[A-Z]{2}$/)
    .nullable(),
  /** the vehicle last chosen */
  vehicleId: z.string().max(64).nullable(),
  /** optional background picture; off by default, since it needs the network */
  tiles: z.strictObject({ address: tileAddress, attribution: z.string().max(300) }).nullable(),
});
export type Settings = z.infer<typeof settingsSchema>;

export const DEFAULT_SETTINGS: Settings = {
  format: 'lanegauge.settings',
  version: 1,
  units: 'metric',
  palette: 'system',
  margins: { heightM: 0.15, physicalWidthM: 0.15 },
  country: null,
  vehicleId: null,
  tiles: null,
};

/**
 * The origin a tile address is fetched from, for the content security policy; undefined where it is no address.
 * Only plain host names are taken: nothing a user types may add a word to the policy.
 */
export function tileOrigin(address: string): string | undefined {
  const match = /^https:\/\/([a-z0-9.-]+(?::\d{1,5})?)\/[^\s]*$/i.exec(address);
  if (!match?.[1]) return undefined;
  if (!['{z}', '{x}', '{y}'].every((part) => address.includes(part))) return undefined;
  return `https://${match[1].toLowerCase()}`;
}
