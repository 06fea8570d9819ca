import { plainLine, quote } from '../../units/text.ts';
import type { Route, RouteSegment } from './route.ts';

/** A track or route while its file is still being read. */
export interface OpenRoute {
  readonly kind: 'track' | 'route';
  readonly number: number;
  name: string | undefined;
  /** every segment as it stands in the file, empty ones included */
  readonly segments: OpenSegment[];
  /** marked as one whose end can only be left by turning round */
  turnAtEnd?: true;
}

export interface OpenSegment {
  readonly lat: number[];
  readonly lon: number[];
  readonly timeMs: number[];
  /** with holes where a position has none */
  elevationM?: number[];
}

/** A segment without positions yet. */
export function openSegment(): OpenSegment {
  return { lat: [], lon: [], timeMs: [] };
}

/** Adds a position in degrees; its time is not known (NaN) until it is read. */
export function addPosition(segment: OpenSegment, lat: number, lon: number): void {
  segment.lat.push(lat);
  segment.lon.push(lon);
  segment.timeMs.push(Number.NaN);
}

/** Closes a route: the name made one plain line, segments without a position left out. */
export function closeRoute(open: OpenRoute): Route {
  const filled = open.segments.filter((segment) => segment.lat.length > 0);
  return {
    name: plainLine(open.name ?? ''),
    kind: open.kind,
    number: open.number,
    segments: filled.map(closeSegment),
    ...(open.turnAtEnd && { turnAtEnd: true }),
  };
}

function closeSegment(segment: OpenSegment): RouteSegment {
  return {
    lat: Float64Array.from(segment.lat),
    lon: Float64Array.from(segment.lon),
    timeMs: Float64Array.from(segment.timeMs),
    ...(segment.elevationM === undefined
      ? {}
      : { elevationM: Float64Array.from(segment.lat, (_, i) => segment.elevationM?.[i] ?? Number.NaN) }),
  };
}

/** How a sentence calls a route: `track 2 "Lake"`. */
export function callRoute(route: Pick<OpenRoute, 'kind' | 'number'> & { name: string | undefined }): string {
  const number = `${route.kind} ${route.number}`;
  return route.name ? `${number} ${quote(route.name)}` : number;
}

/** The route can be driven: somewhere two positions follow each other without a gap. */
export function isDrivable(route: Route): boolean {
  return route.segments.some((segment) => segment.lat.length >= 2);
}
