import type { Roads, Tags } from '../../../geo/roads/roads.ts';
import { type MapSketch, roadsFrom } from '../build-roads.ts';

/** Metres east and north of a place in Kent. */
const FROM = { lat: 51.2, lon: 0.6 };
const PER_LAT = 111_195;
const PER_LON = PER_LAT * Math.cos((FROM.lat * Math.PI) / 180);

export function placeAt(eastM: number, northM: number): { lat: number; lon: number } {
  return { lat: FROM.lat + northM / PER_LAT, lon: FROM.lon + eastM / PER_LON };
}

export interface Planted {
  /** by the number of the cross road, from the west */
  readonly cross?: Readonly<Record<number, Tags>>;
  /** by the number of the piece of the northern road, from the west */
  readonly north?: Readonly<Record<number, Tags>>;
  readonly points?: readonly { readonly eastM: number; readonly northM: number; readonly tags: Tags }[];
}

export const CROSSINGS = 13;
export const APART_M = 500;
export const NORTH_M = 400;

/**
 * Two roads that run east, 6 km long and 400 m from each other, joined every 500 m. Pieces of the southern road have ids
 * from 100, of the northern from 200, cross roads from 300; points stand beside them.
 */
export function twoRoads({ cross = {}, north = {}, points = [] }: Planted): Roads {
  const nodes: Record<string, [number, number]> = {};
  for (let i = 0; i < CROSSINGS; i++)
    for (const [name, northM] of [
      ['s', 0],
      ['n', NORTH_M],
    ] as const) {
      const { lat, lon } = placeAt(i * APART_M, northM);
      nodes[`${name}${i}`] = [lat, lon];
    }
  for (const [i, { eastM, northM }] of points.entries()) {
    const { lat, lon } = placeAt(eastM, northM);
    nodes[`p${i}`] = [lat, lon];
  }
  const ways: MapSketch['ways'][number][] = [];
  for (let i = 0; i + 1 < CROSSINGS; i++) {
    ways.push({
      id: 100 + i,
      refs: [`s${i}`, `s${i + 1}`],
      tags: { highway: 'secondary', name: 'South Road' },
    });
    ways.push({
      id: 200 + i,
      refs: [`n${i}`, `n${i + 1}`],
      tags: { highway: 'tertiary', name: 'North Road', ...north[i] },
    });
  }
  for (let i = 0; i < CROSSINGS; i++)
    ways.push({ id: 300 + i, refs: [`s${i}`, `n${i}`], tags: { highway: 'unclassified', ...cross[i] } });
  return roadsFrom({
    nodes,
    ways,
    nodeTags: Object.fromEntries(points.map(({ tags }, i) => [`p${i}`, tags])),
  });
}
