import type { Roads, TurnRestriction } from '../../geo/roads/roads.ts';
import { WAY_KIND } from '../../geo/roads/roads.ts';
import { buildSegmentIndex } from '../../geo/roads/segment-index.ts';

/** A small map written by hand: nodes by name, ways as lists of names. */
export interface MapSketch {
  /** latitude, longitude */
  readonly nodes: Readonly<Record<string, readonly [number, number]>>;
  readonly nodeTags?: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly ways: readonly {
    readonly id: number;
    readonly refs: readonly string[];
    readonly tags?: Readonly<Record<string, string>>;
  }[];
  readonly restrictions?: readonly {
    readonly from: number;
    readonly via: string | number;
    readonly to: number;
    readonly tags: Readonly<Record<string, string>>;
  }[];
}

/** Roads from a sketch. Node ids are 1, 2, 3… in the order of the sketch; a way without tags is a residential road. */
export function roadsFrom(sketch: MapSketch): Roads {
  const names = Object.keys(sketch.nodes);
  const indexOf = new Map(names.map((name, i) => [name, i]));
  const nodeOf = (name: string): number => {
    const index = indexOf.get(name);
    if (index === undefined) throw new Error(`no node ${name} in the sketch`);
    return index;
  };
  const nodes = {
    count: names.length,
    id: Float64Array.from(names, (_, i) => i + 1),
    lat: Float64Array.from(names, (name) => sketch.nodes[name]?.[0] ?? 0),
    lon: Float64Array.from(names, (name) => sketch.nodes[name]?.[1] ?? 0),
    tags: new Map(Object.entries(sketch.nodeTags ?? {}).map(([name, tags]) => [nodeOf(name), tags])),
  };
  const start = [0];
  const refs: number[] = [];
  for (const way of sketch.ways) {
    refs.push(...way.refs.map(nodeOf));
    start.push(refs.length);
  }
  const tags = sketch.ways.map((way) => way.tags ?? { highway: 'residential' });
  const ways = {
    count: sketch.ways.length,
    id: Float64Array.from(sketch.ways, (way) => way.id),
    start: Uint32Array.from(start),
    refs: Uint32Array.from(refs),
    kind: Uint8Array.from(tags, kindOf),
    tags,
  };
  const restrictions: TurnRestriction[] = (sketch.restrictions ?? []).map((restriction, i) => ({
    id: i + 1,
    from: [restriction.from],
    to: [restriction.to],
    viaNodes: typeof restriction.via === 'string' ? [nodeOf(restriction.via) + 1] : [],
    viaWays: typeof restriction.via === 'number' ? [restriction.via] : [],
    tags: { type: 'restriction', ...restriction.tags },
  }));
  return { nodes, ways, restrictions, index: buildSegmentIndex(nodes, ways), sources: [], notes: [] };
}

function kindOf(tags: Readonly<Record<string, string>>): number {
  if (tags['highway'] !== undefined) return WAY_KIND.road;
  return tags['route'] === 'ferry' ? WAY_KIND.ferry : WAY_KIND.around;
}
