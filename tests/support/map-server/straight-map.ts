import type { DrawnRoute } from '../../../geo/roads/discs.ts';
import type { MapFile } from '../../sample-routes/read-district.ts';
import { MapInMemory } from './map-in-memory.ts';

/** Where the invented road begins; a step of it is 357 m. */
const WEST = 8;
const LAT = 50;
const STEP = 0.005;
/** 21 km */
const SHORT = 61;
/** 71 km */
export const LONG = 201;
/**
 * A road due east, one way a step with a stub at each node and a gate after 30, in a country and in a low-emission zone
 * whose edge is far off, and a drive along it.
 * @param count of its nodes
 */
export function straightMap(count = SHORT): { readonly map: MapInMemory; readonly route: DrawnRoute } {
  const nodes = new Map<
    number,
    { id: number; lat: number; lon: number; tags: Readonly<Record<string, string>> }
  >();
  const place = (id: number, lat: number, lon: number, tags = {}) => nodes.set(id, { id, lat, lon, tags });
  const ways: MapFile['ways'][number][] = [];
  for (let i = 0; i < count; i++) {
    place(1000 + i, LAT, WEST + i * STEP, i === 30 ? { barrier: 'gate' } : {});
    place(2000 + i, LAT + 0.001, WEST + i * STEP);
    ways.push({ id: 2000 + i, refs: [1000 + i, 2000 + i], tags: { highway: 'track' } });
    if (i > 0)
      ways.push({ id: 1000 + i, refs: [999 + i, 1000 + i], tags: { highway: 'secondary', ref: 'L 1' } });
  }
  const corners = [
    [-1, -1],
    [-1, 3],
    [1, 3],
    [1, -1],
  ] as const;
  const ring = (first: number, size: number) => {
    corners.forEach(([lat, lon], i) => {
      place(first + i, LAT + lat * size, WEST + lon * size);
    });
    return [first, first + 1, first + 2, first + 3, first];
  };
  ways.push({ id: 10, refs: ring(10, 2), tags: {} }, { id: 20, refs: ring(20, 1), tags: {} });
  const outer = (ref: number) => [{ type: 'way' as const, ref, role: 'outer' }];
  const relations = [
    {
      id: 1,
      tags: { type: 'boundary', boundary: 'administrative', admin_level: '2', 'ISO3166-1': 'XY' },
      members: outer(10),
    },
    {
      id: 2,
      tags: { type: 'boundary', boundary: 'low_emission_zone', name: 'Clean Air' },
      members: outer(20),
    },
  ];
  const lon = Float64Array.from({ length: count }, (_, i) => WEST + i * STEP);
  const segment = { lat: Float64Array.from(lon, () => LAT), lon };
  return { map: new MapInMemory({ nodes, ways, relations }), route: { segments: [segment] } };
}
