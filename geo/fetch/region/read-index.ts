import { area } from '@turf/turf';
import { z } from 'zod';
import { given } from '../../given.ts';
import { fail, ok, type Result } from '../../result.ts';
import { clip, quote } from '../../units/text.ts';
import { boxOf, readOutline } from './read-outline.ts';
import type { Region, RegionIndex } from './region.ts';

/** Ten times what the largest list known has; more is no list of regions. */
const MOST_REGIONS = 6_000;
const REFUSALS_TOLD = 10;
/** A line there and back has no area but for rounding; the smallest country has half a square kilometre. */
const LEAST_KM2 = 0.01;

const indexSchema = z.object({ type: z.literal('FeatureCollection'), features: z.array(z.unknown()) });

/** Whatever else an entry holds, as addresses of other kinds of files, is passed over. */
const entrySchema = z.object({
  properties: z.object({
    id: z.string().min(1).max(100),
    name: z.string().min(1).max(200),
    parent: z.string().max(100).optional(),
    urls: z.object({ pbf: z.string().max(500) }),
  }),
  geometry: z.object({ type: z.enum(['Polygon', 'MultiPolygon']), coordinates: z.unknown() }),
});

/** Files with what only the server's own people may have. */
const NOT_PUBLIC = /internal|history/iu;

/** @returns what speaks against an address, as the end of a sentence: `its file …`; undefined where nothing does */
export type RefuseAddress = (url: string) => string | undefined;

/**
 * A server's list of regions: a GeoJSON FeatureCollection whose features have `id`, `name`, `parent`, `urls.pbf` and an
 * outline. What is no such list is refused; an entry that cannot be used costs that entry alone and is told.
 * @param refuseAddress which files may be asked for at all
 */
export function readRegionIndex(text: string, refuseAddress: RefuseAddress): Result<RegionIndex> {
  const features = featuresOf(text);
  if (!features.ok) return features;
  const regions = new Map<string, Region>();
  const refused: string[] = [];
  let refusedCount = 0;
  for (const [at, feature] of features.value.entries()) {
    const region = readEntry(feature, refuseAddress);
    const twice = region.ok && regions.has(region.value.id);
    if (region.ok && !twice) {
      regions.set(region.value.id, region.value);
      continue;
    }
    refusedCount++;
    const why = region.ok ? 'an entry before it has the same name' : region.error.message;
    if (refused.length < REFUSALS_TOLD) refused.push(`${nameEntry(feature, at)} is left out: ${why}.`);
  }
  if (regions.size === 0)
    return fail(
      'index-empty',
      `The list of regions holds none that can be used (${refused[0] ?? 'it is empty'}). Name another server.`,
    );
  return ok({ regions: [...regions.values()], refused, refusedCount });
}

function featuresOf(text: string): Result<readonly unknown[]> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    const page = /^\s*</u.test(text);
    return fail(
      'index-json',
      page
        ? 'What came is a web page, not a list of regions. Look at the address; a network that asks for a login answers so too.'
        : 'The list of regions cannot be read: it is no whole JSON. Fetch it again; if that does not help, look at the address.',
    );
  }
  const index = indexSchema.safeParse(json);
  if (!index.success)
    return fail(
      'index-shape',
      'What came is no list of regions (a GeoJSON FeatureCollection with outlines). Look at the address.',
    );
  const { features } = index.data;
  if (features.length > MOST_REGIONS)
    return fail(
      'index-size',
      `The list holds ${features.length} entries, more than any list of regions (${MOST_REGIONS} at the most). Look at the address.`,
    );
  return ok(features);
}

function readEntry(feature: unknown, refuseAddress: RefuseAddress): Result<Region> {
  const entry = entrySchema.safeParse(feature);
  if (!entry.success) return fail('entry', sayIssue(entry.error.issues[0]?.path ?? []));
  const { properties, geometry } = entry.data;
  const url = properties.urls.pbf;
  if (!/^https?:\/\/\S+\.osm\.pbf$/u.test(url))
    return fail('entry', `its file ${quote(url)} is no address of an .osm.pbf`);
  if (NOT_PUBLIC.test(url)) return fail('entry', `its file ${quote(url)} is not a public one`);
  const why = refuseAddress(url);
  if (why !== undefined) return fail('entry', `its file ${why}`);
  const outline = readOutline(geometry.type, geometry.coordinates);
  if (!outline.ok) return outline;
  const areaKm2 = area({ type: 'MultiPolygon', coordinates: outline.value }) / 1e6;
  if (!(areaKm2 > LEAST_KM2)) return fail('entry', 'its outline holds no area');
  return ok({
    id: properties.id,
    name: clip(properties.name, 80),
    ...given({ parent: properties.parent }),
    url,
    outline: outline.value,
    box: boxOf(outline.value),
    areaKm2,
  });
}

function sayIssue(path: readonly PropertyKey[]): string {
  const [first, second] = path;
  if (first === 'geometry') return 'it has no outline';
  if (second === 'urls') return 'it names no .osm.pbf file';
  return second === undefined ? 'it is no region' : `its ${clip(String(second), 20)} is missing or odd`;
}

function nameEntry(feature: unknown, at: number): string {
  const named = z.object({ properties: z.object({ id: z.string().min(1) }) }).safeParse(feature);
  return named.success ? `Region ${quote(named.data.properties.id)}` : `Entry ${at + 1}`;
}
