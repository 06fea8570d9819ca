import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { createOSMStream } from 'osm-pbf-parser-node';

export const SAMPLES = resolve(import.meta.dirname, '../../sample-routes');

type Tags = Readonly<Record<string, string>>;

export interface MapNode {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tags: Tags;
}

export interface MapWay {
  readonly id: number;
  readonly refs: readonly number[];
  readonly tags: Tags;
}

export interface MapRelation {
  readonly id: number;
  readonly tags: Tags;
  readonly members: readonly {
    readonly type: 'node' | 'way' | 'relation';
    readonly ref: number;
    readonly role: string;
  }[];
}

export interface MapFile {
  readonly nodes: ReadonlyMap<number, MapNode>;
  readonly ways: readonly MapWay[];
  readonly relations: readonly MapRelation[];
}

/** The district's elements as a reader that is not ours gives them. */
export async function readDistrict(file = resolve(SAMPLES, 'district.osm.pbf')): Promise<MapFile> {
  if (!existsSync(file)) throw new Error(`${file} is missing; make it with: npm run sample`);
  const nodes = new Map<number, MapNode>();
  const ways: MapWay[] = [];
  const relations: MapRelation[] = [];
  for await (const element of createOSMStream(file)) {
    const item = element as { type?: string; id?: number; tags?: Tags };
    const tags = item.tags ?? {};
    if (item.type === 'node') nodes.set((element as MapNode).id, { ...(element as MapNode), tags });
    if (item.type === 'way') ways.push({ ...(element as MapWay), tags });
    if (item.type === 'relation') relations.push({ ...(element as MapRelation), tags });
  }
  return { nodes, ways, relations };
}

const M_PER_DEGREE = 111_195;

/** Metres east and north of the district's middle: flat enough for ten kilometres. */
export function flatten(place: { readonly lat: number; readonly lon: number }): { x: number; y: number } {
  return {
    x: (place.lon + 20) * M_PER_DEGREE * Math.cos((47.5 * Math.PI) / 180),
    y: (place.lat - 47.5) * M_PER_DEGREE,
  };
}
