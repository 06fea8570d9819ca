import type { DrawnRoute } from '../../../geo/roads/discs.ts';

/** A region of an invented list: its outline as corners, longitude before latitude, left open. */
export interface Drawn {
  readonly id: string;
  readonly corners: readonly (readonly [lon: number, lat: number])[];
  readonly parent?: string;
  readonly url?: string;
}

/** A rectangle. */
export function boxRegion(
  id: string,
  [west, south, east, north]: readonly [number, number, number, number],
  more: Partial<Drawn> = {},
): Drawn {
  return {
    id,
    corners: [
      [west, south],
      [east, south],
      [east, north],
      [west, north],
    ],
    ...more,
  };
}

/** The list as a server sends it. */
export function indexText(regions: readonly Drawn[], origin = 'https://maps.example.org'): string {
  return JSON.stringify({ type: 'FeatureCollection', features: regions.map((one) => feature(one, origin)) });
}

export function feature({ id, corners, parent, url }: Drawn, origin = 'https://maps.example.org') {
  return {
    type: 'Feature',
    properties: {
      id,
      ...(parent === undefined ? {} : { parent }),
      name: id.charAt(0).toUpperCase() + id.slice(1),
      'iso3166-1:alpha2': ['XX'],
      urls: {
        pbf: url ?? `${origin}/${id}-latest.osm.pbf`,
        'pbf-internal': `${origin}/${id}-latest-internal.osm.pbf`,
        history: `${origin}/${id}-internal.osh.pbf`,
      },
    },
    geometry: { type: 'MultiPolygon', coordinates: [[[...corners, corners[0]]]] },
  };
}

/** Places of a drive without a break, longitude before latitude. */
export type Places = readonly (readonly [lon: number, lat: number])[];

/** A drive straight through places; with several lists, breaks between them. */
export function lineThrough(
  ...parts: readonly (readonly (readonly [lon: number, lat: number])[])[]
): DrawnRoute {
  return {
    segments: parts.map((places) => ({
      lat: Float64Array.from(places, ([, lat]) => lat),
      lon: Float64Array.from(places, ([lon]) => lon),
    })),
  };
}
