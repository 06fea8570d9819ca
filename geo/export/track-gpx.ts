import { gpxText } from '../drive/gpx/gpx-text.ts';
import type { Route, RouteStop } from '../drive/gpx/route.ts';
import { given } from '../given.ts';

/** A stop as the page holds it. */
interface StopOnLine {
  readonly lat: number;
  readonly lon: number;
  readonly atM?: number | undefined;
}

/** A followed drive as far as its line counts: positions are latitude and longitude in turn, degrees. */
export interface FollowedLine {
  readonly name: string;
  /** where the vehicle stops on the way */
  readonly stops?: readonly StopOnLine[] | undefined;
  /** its end can only be left by turning round */
  readonly turnAtEnd?: true | undefined;
  readonly legs: readonly { readonly kind: 'stretch' | 'offMap' | 'gap'; readonly line: readonly number[] }[];
}

/**
 * A followed drive as a GPX track that holds every node of the roads it follows, so that any device shows these roads and
 * no others. What is not driven, a gap, parts two segments.
 *
 * @returns undefined where there is nothing to drive
 */
export function trackGpx(
  { name, legs, stops = [], turnAtEnd }: FollowedLine,
  creator: string,
): string | undefined {
  const segments: Route['segments'][number][] = [];
  let open: number[] = [];
  const close = () => {
    if (open.length > 2) segments.push(segmentOf(open));
    open = [];
  };
  for (const { kind, line } of legs) {
    if (kind === 'gap') close();
    else appendTo(open, line);
  }
  close();
  return segments.length === 0
    ? undefined
    : gpxText({ name, segments, stops: stops.map(routeStop), ...given({ turnAtEnd }) }, [], creator);
}

function routeStop({ lat, lon, atM }: StopOnLine): RouteStop {
  return { lat, lon, ...given({ atM }) };
}

/** Legs meet in one position, which both hold: it stands once. */
function appendTo(open: number[], line: readonly number[]): void {
  for (let i = 0; i + 1 < line.length; i += 2) {
    const [lat, lon] = open.slice(-2);
    if (line[i] !== lat || line[i + 1] !== lon) open.push(line[i]!, line[i + 1]!);
  }
}

function segmentOf(line: readonly number[]): Route['segments'][number] {
  const count = line.length / 2;
  return {
    lat: Float64Array.from({ length: count }, (_, i) => line[2 * i]!),
    lon: Float64Array.from({ length: count }, (_, i) => line[2 * i + 1]!),
    timeMs: new Float64Array(count).fill(Number.NaN),
  };
}
