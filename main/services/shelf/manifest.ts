import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { z } from 'zod';
import { readBytes } from '../files/read-bytes.ts';
import { replaceFile } from '../files/replace-file.ts';

/** Two copies, so that one that is damaged loses nothing. */
const COPIES = ['map-1.json', 'map-2.json'] as const;
const MANIFEST_MAX_BYTES = 4 * 1024 * 1024;

export const PART_NAME = /^part-\d{1,15}-\d{1,6}\.shelf$/;

const partSchema = z.strictObject({
  file: z.string().regex(PART_NAME),
  bytes: z.int().min(0),
  roads: z.int().min(0),
  dataDate: z.string().optional(),
  source: z.strictObject({ name: z.string(), sha256: z.string(), bytes: z.int().min(0) }),
  /** where the source lay, for making the part anew */
  path: z.string().optional(),
});

/** How a map came to the shelf. */
const originSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('file') }),
  /** fetched along a drive's line; what could not be had stands in `lacking`, metres along the line */
  z.strictObject({
    by: z.literal('line'),
    from: z.string(),
    lacking: z.array(z.strictObject({ fromM: z.number(), toM: z.number() })),
    notes: z.array(z.string()),
  }),
  z.strictObject({ by: z.literal('region'), from: z.string() }),
]);
export type Origin = z.infer<typeof originSchema>;

const manifestSchema = z.strictObject({
  format: z.literal('lanegauge.shelf'),
  version: z.literal(1),
  name: z.string().min(1),
  /** grows by one each time the map is made anew */
  generation: z.int().min(1),
  /** ISO 8601 */
  imported: z.string(),
  origin: originSchema,
  parts: z.array(partSchema).min(1),
  /** the day of the newest data that the map had before, where this is older or tells no date */
  newerBefore: z.string().optional(),
});
/** What a map's folder holds now. */
export type Manifest = z.infer<typeof manifestSchema>;

/** What was read of a folder: its newest sound manifest, none at all, or only damaged ones. */
export type ManifestRead =
  | { readonly kind: 'sound'; readonly manifest: Manifest }
  | { readonly kind: 'none' }
  | { readonly kind: 'damaged' };

/** Reads a map's manifest: of its two copies the newest sound one. Nothing is written. */
export async function readManifest(folder: string): Promise<ManifestRead> {
  const copies = await Promise.all(COPIES.map((name) => readCopy(join(folder, name))));
  const sound = copies.filter((copy) => typeof copy === 'object');
  const newest = sound.sort((a, b) => b.generation - a.generation)[0];
  if (newest) return { kind: 'sound', manifest: newest };
  return { kind: copies.includes('damaged') ? 'damaged' : 'none' };
}

async function readCopy(path: string): Promise<Manifest | 'none' | 'damaged'> {
  const bytes = await readBytes(path, 'manifest', MANIFEST_MAX_BYTES);
  if (!bytes.ok) return bytes.error.code === 'missing' ? 'none' : 'damaged';
  try {
    const text = Buffer.from(bytes.value).toString('utf8');
    const [crc, body] = [text.slice(0, 8), text.slice(9)];
    if (crc !== checksum(body)) return 'damaged';
    const read = manifestSchema.safeParse(JSON.parse(body));
    return read.success ? read.data : 'damaged';
  } catch {
    return 'damaged';
  }
}

/**
 * Makes this what the folder holds. The map is the new one as soon as the first copy is in its place.
 * @throws what the system says; nothing has changed then
 */
export async function writeManifest(folder: string, manifest: Manifest): Promise<void> {
  const body = `${JSON.stringify(manifest, undefined, 1)}\n`;
  const text = `${checksum(body)}\n${body}`;
  const [first, ...others] = COPIES.map((name) => join(folder, name));
  await replaceFile(first ?? '', text);
  // the map is the new one now, even where no further copy can be made
  for (const copy of others) await replaceFile(copy, text).catch(() => {});
}

function checksum(text: string): string {
  return crc32(text).toString(16).padStart(8, '0');
}
