import type { Drive } from '../../../../geo/drive/drive.ts';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { localFrame } from '../../../../geo/earth/frame.ts';
import type { Roads, Tags } from '../../../../geo/roads/roads.ts';
import { type MapSketch, roadsFrom } from '../../../support/build-roads.ts';

/** Metres east and north of a place in open country. */
export type At = readonly [number, number];

const frame = localFrame(52, 8);

export interface WaySketch {
  readonly id: number;
  /** node names, or places in metres for nodes nothing else shares */
  readonly refs: readonly (string | At)[];
  readonly tags?: Tags;
}

/** A map in metres. Nodes with a name join ways; a place without one is a node of its own. */
export function mapOf(
  nodes: Readonly<Record<string, At>>,
  ways: readonly WaySketch[],
  restrictions: MapSketch['restrictions'] = [],
): Roads {
  const places: Record<string, readonly [number, number]> = {};
  for (const [name, at] of Object.entries(nodes)) places[name] = degrees(at);
  let own = 0;
  const named = ways.map((way) => ({
    ...way,
    refs: way.refs.map((ref) => {
      if (typeof ref === 'string') return ref;
      const name = `own ${own++}`;
      places[name] = degrees(ref);
      return name;
    }),
  }));
  return roadsFrom({ nodes: places, ways: named, restrictions });
}

export function degrees([x, y]: At): readonly [number, number] {
  const { lat, lon } = frame.fromXY(x, y);
  return [lat, lon];
}

/** A planned track through places in metres, with a vertex every `stepM`; several lists make several segments. */
export function track(lists: readonly (readonly At[])[] | readonly At[], stepM = 15): Route {
  const segments = (isPlaces(lists) ? [lists] : lists).map((places) => segmentOf(densify(places, stepM)));
  return { name: '', kind: 'track', number: 1, segments };
}

/** A route of a few points as planners write it. */
export function sparse(places: readonly At[]): Route {
  return { name: '', kind: 'route', number: 1, segments: [segmentOf(places)] };
}

/** A track as a receiver writes it, one position a second. */
export function recorded(places: readonly At[]): Route {
  const segment = segmentOf(places);
  return {
    name: '',
    kind: 'track',
    number: 1,
    segments: [{ ...segment, timeMs: segment.timeMs.map((_, i) => 1_750_000_000_000 + i * 1000) }],
  };
}

/** The drive in short: way id with + along the way and - against it, `off` and `gap`. */
export function roadsDriven(drive: Drive, roads: Roads): string {
  return drive.legs
    .map((leg) => {
      if (leg.kind === 'offMap') return 'off';
      if (leg.kind === 'gap') return 'gap';
      return `${roads.ways.id[leg.way]}${leg.forward ? '+' : '-'}`;
    })
    .join(' ');
}

export function follow(route: Route, roads: Roads): string {
  return roadsDriven(followRoads(route, roads), roads);
}

export function densify(places: readonly At[], stepM: number): At[] {
  const dense: At[] = [];
  places.forEach(([x, y], i) => {
    const before = places[i - 1];
    if (before !== undefined) {
      const length = Math.hypot(x - before[0], y - before[1]);
      const steps = Math.max(1, Math.round(length / stepM));
      for (let k = 1; k < steps; k++)
        dense.push([before[0] + ((x - before[0]) * k) / steps, before[1] + ((y - before[1]) * k) / steps]);
    }
    dense.push([x, y]);
  });
  return dense;
}

function segmentOf(places: readonly At[]) {
  const all = places.map(degrees);
  return {
    lat: Float64Array.from(all, ([lat]) => lat),
    lon: Float64Array.from(all, ([, lon]) => lon),
    timeMs: new Float64Array(all.length).fill(Number.NaN),
  };
}

function isPlaces(lists: readonly (readonly At[])[] | readonly At[]): lists is readonly At[] {
  return typeof lists[0]?.[0] === 'number';
}
