import { createRequire } from 'node:module';
import type { Route, RouteFile } from '../../../geo/drive/gpx/route.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { LightElement } from './light-dom.ts';

/** What of gpxparser is used; its own declarations are wrong in places. */
interface GpxParser {
  readonly tracks: readonly { readonly points: readonly ParsedPoint[] }[];
  readonly routes: readonly { readonly points: readonly ParsedPoint[] }[];
  readonly waypoints: readonly unknown[];
  parse(text: string): void;
  calcElevation(): unknown;
  calculSlope(): unknown;
  calculDistance(): unknown;
}
interface ParsedPoint {
  readonly lat: number;
  readonly lon: number;
}

const Parser = createRequire(import.meta.url)('gpxparser') as new () => GpxParser;

/**
 * Asks gpxparser for its own reading of a document that was read strictly, and compares all positions.
 *
 * It flattens segments and knows no shape points, so tracks are compared position by position with the gaps closed,
 * and its route points must be found among ours in order, the shape points accounting for the rest.
 */
export function compareWithGpxparser(document: LightElement, file: RouteFile): Result<undefined> {
  const parsed = parse(document);
  const tracks = file.routes.filter((route) => route.kind === 'track');
  const routes = file.routes.filter((route) => route.kind === 'route');
  const unmatched = routes.map((route, i) => unmatchedPositions(route, parsed.routes[i]?.points ?? []));
  const agree =
    tracks.length === parsed.tracks.length &&
    routes.length === parsed.routes.length &&
    file.waypoints === parsed.waypoints.length &&
    tracks.every((track, i) => unmatchedPositions(track, parsed.tracks[i]?.points ?? []) === 0) &&
    unmatched.reduce((sum, count) => sum + count, 0) === file.shapePoints;
  return agree
    ? ok(undefined)
    : fail('gpx.disagree', 'Two readings of the file give different positions; export the drive again.');
}

/** Our positions that the other reading lacks; NaN when it has one that we lack. */
function unmatchedPositions(route: Route, points: readonly ParsedPoint[]): number {
  let next = 0;
  let unmatched = 0;
  for (const { lat, lon } of route.segments)
    for (let i = 0; i < lat.length; i++)
      if (points[next]?.lat === lat[i] && points[next]?.lon === lon[i]) next++;
      else unmatched++;
  return next === points.length ? unmatched : Number.NaN;
}

/** The globals gpxparser looks for or leaves behind. */
const GLOBALS = ['window', 'idx', 'elem'] as const;

function parse(document: LightElement): GpxParser {
  const before = GLOBALS.map((name) => Object.getOwnPropertyDescriptor(globalThis, name));
  const lend = (name: string, value: unknown) =>
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true, enumerable: true });
  try {
    lend('window', { DOMParser: domParserOf(document) });
    lend('idx', undefined);
    lend('elem', undefined);
    const parser = new Parser();
    // statistics we do not use, and calcElevation overflows the stack above 120,000 points
    parser.calcElevation = nothing;
    parser.calculSlope = nothing;
    parser.calculDistance = () => ({ cumul: [] });
    // what it would parse is there already
    parser.parse('');
    return parser;
  } finally {
    GLOBALS.forEach((name, i) => {
      const was = before[i];
      if (was) Object.defineProperty(globalThis, name, was);
      else Reflect.deleteProperty(globalThis, name);
    });
  }
}

function nothing(): undefined {
  return undefined;
}

function domParserOf(document: LightElement) {
  return class {
    parseFromString(): LightElement {
      return document;
    }
  };
}
