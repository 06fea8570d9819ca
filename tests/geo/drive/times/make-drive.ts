import type { Drive, Leg } from '../../../../geo/drive/drive.ts';
import { wayAlong } from '../../../../geo/graph/road-graph.ts';
import type { Roads, Tags } from '../../../../geo/roads/roads.ts';

export interface MadeWay {
  /** metres east and north of the origin; the same place is the same node */
  readonly at: readonly (readonly [number, number])[];
  readonly tags: Tags;
  readonly kind?: 0 | 1;
}

/** Oakham, so that the country is Great Britain. */
const ORIGIN = { lat: 52.67, lon: -0.73 };
const M_PER_DEG = 111_195;

export function place([east, north]: readonly [number, number], origin = ORIGIN) {
  const lat = origin.lat + north / M_PER_DEG;
  return { lat, lon: origin.lon + east / (M_PER_DEG * Math.cos((origin.lat * Math.PI) / 180)) };
}

/** Roads of a few ways drawn in metres, with tags on the nodes at given places. */
export function makeRoads(
  ways: readonly MadeWay[],
  nodeTags: readonly { at: readonly [number, number]; tags: Tags }[] = [],
  origin = ORIGIN,
): Roads {
  const index = new Map<string, number>();
  const lat: number[] = [];
  const lon: number[] = [];
  const nodeAt = (at: readonly [number, number]) => {
    const key = at.join(' ');
    const known = index.get(key);
    if (known !== undefined) return known;
    const { lat: y, lon: x } = place(at, origin);
    lat.push(y);
    lon.push(x);
    index.set(key, lat.length - 1);
    return lat.length - 1;
  };
  const start = [0];
  const refs: number[] = [];
  for (const way of ways) {
    refs.push(...way.at.map(nodeAt));
    start.push(refs.length);
  }
  return {
    nodes: {
      count: lat.length,
      id: Float64Array.from(lat, (_, i) => i + 1),
      lat: Float64Array.from(lat),
      lon: Float64Array.from(lon),
      tags: new Map(nodeTags.map(({ at, tags }) => [nodeAt(at), tags])),
    },
    ways: {
      count: ways.length,
      id: Float64Array.from(ways, (_, i) => 100 + i),
      start: Uint32Array.from(start),
      refs: Uint32Array.from(refs),
      kind: Uint8Array.from(ways, ({ kind }) => kind ?? 0),
      tags: ways.map(({ tags }) => tags),
    },
    restrictions: [],
    index: { near: () => [], inBox: () => [] },
    sources: [],
    notes: [],
  };
}

/** A drive over whole ways one after the other; a negative number is a way driven against its drawn order (-1 is way 0). */
export function driveOver(roads: Roads, ways: readonly number[]): Drive {
  const legs: Leg[] = [];
  let fromM = 0;
  for (const signed of ways) {
    const forward = signed >= 0;
    const way = forward ? signed : -signed - 1;
    const length = wayAlong(roads, way).at(-1) ?? 0;
    legs.push({
      kind: 'stretch',
      way,
      forward,
      alongFromM: forward ? 0 : length,
      alongToM: forward ? length : 0,
      fromM,
      toM: fromM + length,
    });
    fromM += length;
  }
  return { lengthM: fromM, legs, guessed: [], doubtful: [], brokenTurns: [] };
}
