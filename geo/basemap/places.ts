import type { Roads, Tags } from '../roads/roads.ts';
import type { DrawKind, LabelKind } from './features.ts';
import { labelText } from './label-text.ts';

/** A name at one place. */
export interface Place {
  readonly say: string;
  readonly kind: LabelKind;
  readonly rank: number;
  readonly minZoom: number;
  /** unit square */
  readonly x: number;
  readonly y: number;
  /** only where the area is at least this wide, unit square */
  readonly width?: number;
}

const PLACE: Readonly<Record<string, readonly [kind: LabelKind, rank: number, minZoom: number]>> = {
  city: ['city', 0, 4],
  town: ['town', 5, 7],
  island: ['island', 10, 9],
  village: ['village', 15, 10],
  suburb: ['suburb', 20, 12],
  quarter: ['suburb', 24, 13],
  hamlet: ['hamlet', 25, 12],
  neighbourhood: ['locality', 60, 14],
  islet: ['locality', 61, 14],
  locality: ['locality', 65, 14],
  farm: ['locality', 66, 15],
  isolated_dwelling: ['locality', 66, 14],
  square: ['locality', 67, 16],
};

interface Area {
  readonly kind: DrawKind;
  readonly area: boolean;
  readonly refs: Uint32Array;
  readonly tags: Tags;
}

/** Towns, stations and sites by their nodes; lakes, woods and sites by their areas. */
export function placesOf(
  nodes: Roads['nodes'],
  drawn: readonly Area[],
  x: Float64Array,
  y: Float64Array,
): Place[] {
  const places: Place[] = [];
  for (const [node, tags] of nodes.tags) {
    const place = named(tags);
    if (place) places.push({ ...place, x: x[node]!, y: y[node]! });
  }
  for (const { area, kind, refs, tags } of drawn) {
    if (!area || (kind !== 'water' && kind !== 'wood' && kind !== 'park')) continue;
    const say = labelText(tags['name']);
    if (say === undefined) continue;
    let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const ref of refs) {
      west = Math.min(west, x[ref]!);
      east = Math.max(east, x[ref]!);
      north = Math.min(north, y[ref]!);
      south = Math.max(south, y[ref]!);
    }
    places.push({
      say,
      kind: kind === 'water' ? 'water' : 'site',
      rank: isStay(tags) ? 40 : 55,
      minZoom: 11,
      x: (west + east) / 2,
      y: (north + south) / 2,
      width: east - west,
    });
  }
  return places;
}

function named(tags: Tags): Omit<Place, 'x' | 'y'> | undefined {
  const say = labelText(tags['name']);
  if (say === undefined) return undefined;
  const place = tags['place'];
  if (place !== undefined && Object.hasOwn(PLACE, place)) {
    const [kind, rank, minZoom] = PLACE[place] ?? PLACE_OTHER;
    return { say, kind, rank, minZoom };
  }
  const railway = tags['railway'];
  if (railway === 'station' || railway === 'halt') return { say, kind: 'station', rank: 45, minZoom: 13 };
  return isStay(tags) ? { say, kind: 'site', rank: 40, minZoom: 12 } : undefined;
}

/** From which zoom (of 256-pixel tiles) the name of such a node is drawn, if it has one; undefined: never. */
export function placeMinZoom(tags: Tags): number | undefined {
  return named({ ...tags, name: '–' })?.minZoom;
}

const PLACE_OTHER = ['locality', 67, 15] as const;

function isStay(tags: Tags): boolean {
  return tags['tourism'] === 'camp_site' || tags['tourism'] === 'caravan_site';
}
