import { fail, ok, type Problem, type Result } from '../../result.ts';
import { quote } from '../../units/text.ts';
import { type GpxDoubts, gpxDoubts } from './gpx-doubts.ts';
import { holdsElementsOnly } from './gpx-names.ts';
import { type GpxPart, type GpxPlace, isLookalike, partOf } from './gpx-part.ts';
import { refuseRoot, refuseUndrivable } from './gpx-refusals.ts';
import {
  addPosition,
  callRoute,
  closeRoute,
  isDrivable,
  type OpenRoute,
  type OpenSegment,
  openSegment,
} from './gpx-tracks.ts';
import { readPosition, readTimeMs } from './gpx-values.ts';
import type { RouteFile, RouteStop } from './route.ts';
import { isStopMark, isTurnMark, MOST_STOPS, markedStop } from './stop-mark.ts';
import type { XmlElement } from './strict-xml.ts';

/** Far more tracks and segments than any planner writes; each costs memory, even an empty one. */
const MAX_PIECES = 100_000;

/** How far the reading of one file has come: the elements that are open, and all that was gathered. */
export interface GpxReading extends GpxPlace {
  readonly parts: GpxPart[];
  readonly routes: OpenRoute[];
  readonly doubts: GpxDoubts;
  readonly count: { track: number; route: number; waypoints: number; shapePoints: number; pieces: number };
  /** waypoints that this program marked as stops */
  readonly stops: RouteStop[];
  /** where the waypoint opened last lies; undefined where its position is none */
  waypoint: Pick<RouteStop, 'lat' | 'lon'> | undefined;
  rootUri: string;
  route: OpenRoute | undefined;
  segment: OpenSegment | undefined;
  /** index of the point opened last, the one a time belongs to */
  point: number;
  routePoints: number;
  inRoutePoint: boolean;
  /** the text of a name, time or elevation while its element, at this depth, is open */
  heard: { text: string; readonly depth: number } | undefined;
}

/** A reading ahead of its first element. */
export function startReading(): GpxReading {
  return {
    parts: [],
    routes: [],
    doubts: gpxDoubts(),
    count: { track: 0, route: 0, waypoints: 0, shapePoints: 0, pieces: 0 },
    stops: [],
    waypoint: undefined,
    rootUri: '',
    route: undefined,
    segment: undefined,
    point: 0,
    routePoints: 0,
    inRoutePoint: false,
    heard: undefined,
  };
}

/** An element opens. @returns why the file is refused there, if it is */
export function openElement(reading: GpxReading, element: XmlElement): Problem | undefined {
  if (reading.parts.length === 0) return openRoot(reading, element);
  const part = partOf(element, reading);
  if (typeof part !== 'string') return part;
  if (part === 'foreign' && isLookalike(element, reading))
    reading.doubts.leftOut(`"${element.local}" on line ${element.line}`);
  if (part === 'foreign' && isStopMark(element)) takeStop(reading, element);
  if (part === 'foreign' && isTurnMark(element)) takeTurn(reading);
  reading.parts.push(part);
  return openPart(reading, part, element);
}

/** The mark stands in the waypoint's own extensions, nowhere else. */
function takeStop({ parts, waypoint, stops, doubts }: GpxReading, element: XmlElement): void {
  if (parts.at(-1) !== 'foreign' || parts.at(-2) !== 'wpt' || waypoint === undefined) return;
  if (stops.length < MOST_STOPS) stops.push(markedStop(waypoint, element));
  else doubts.manyStops(`on line ${element.line}`);
}

/** The mark stands in the track's own extensions. */
function takeTurn({ parts, route }: GpxReading): void {
  if (parts.at(-1) === 'foreign' && parts.at(-2) === 'trk' && route) route.turnAtEnd = true;
}

/** Character data. @returns why the file is refused there, if it is */
export function hearText({ heard, parts }: GpxReading, piece: string, line: number): Problem | undefined {
  if (heard) {
    heard.text += piece;
    return undefined;
  }
  // a point that lost its first bracket is text
  if (!holdsElementsOnly(parts.at(-1)) || piece.trim() === '') return undefined;
  return fail(
    'gpx.misplaced',
    `Line ${line}: text ${quote(piece)} stands between the elements; the file may be damaged, export the drive again.`,
  ).error;
}

/** The element opened last closes. */
export function closeElement(reading: GpxReading): void {
  const { heard, parts, route } = reading;
  const depth = parts.length;
  const part = parts.pop();
  if (part === 'rtept') reading.inRoutePoint = false;
  if (depth !== heard?.depth) return;
  if (part === 'name' && route) route.name = heard.text;
  if (part === 'time') keepTime(reading, heard.text);
  if (part === 'ele') keepElevation(reading, heard.text);
  reading.heard = undefined;
}

/** The document has ended. @returns tracks before routes, or why there is nothing to drive */
export function finishReading({ routes, count, doubts, stops }: GpxReading): Result<RouteFile> {
  const closed = [...routes]
    .sort((a, b) => Number(b.kind === 'track') - Number(a.kind === 'track'))
    .map((open) => ({ ...closeRoute(open), ...(stops.length > 0 && { stops }) }));
  if (!closed.some(isDrivable)) return refuseUndrivable(closed, count.waypoints);
  const { waypoints, shapePoints } = count;
  return ok({ routes: closed, waypoints, shapePoints, notes: doubts.say(routes) });
}

function openRoot(reading: GpxReading, { local, uri, attributes, line }: XmlElement): Problem | undefined {
  if (local !== 'gpx') return refuseRoot(local, line).error;
  const version = attributes['version'];
  if (version !== undefined && !/^\s*1\.[01]\s*$/u.test(version)) reading.doubts.version(version);
  reading.rootUri = uri;
  reading.parts.push('gpx');
  return undefined;
}

function openPart(reading: GpxReading, part: GpxPart, element: XmlElement): Problem | undefined {
  switch (part) {
    case 'trk':
    case 'rte':
      openRoute(reading, part);
      return refuseTooMany(reading, element.line);
    case 'trkseg':
      openRouteSegment(reading);
      return refuseTooMany(reading, element.line);
    case 'trkpt':
    case 'rtept':
    case 'rpt':
      return addPoint(reading, part, element);
    case 'wpt':
      addWaypoint(reading, element);
      return undefined;
    case 'name':
    case 'time':
    case 'ele':
      reading.heard = { text: '', depth: reading.parts.length };
      return undefined;
    default:
      return undefined;
  }
}

function openRoute(reading: GpxReading, part: 'trk' | 'rte'): void {
  const kind = part === 'trk' ? 'track' : 'route';
  reading.count.pieces++;
  reading.route = { kind, number: ++reading.count[kind], name: undefined, segments: [] };
  reading.routes.push(reading.route);
  reading.routePoints = 0;
  if (part === 'rte') startSegment(reading, reading.route);
}

function openRouteSegment(reading: GpxReading): void {
  reading.count.pieces++;
  if (reading.route) startSegment(reading, reading.route);
}

function startSegment(reading: GpxReading, route: OpenRoute): void {
  reading.segment = openSegment();
  route.segments.push(reading.segment);
}

function refuseTooMany({ count }: GpxReading, line: number): Problem | undefined {
  if (count.pieces <= MAX_PIECES) return undefined;
  return fail(
    'gpx.tooMany',
    `Line ${line}: the file has more than ${MAX_PIECES} tracks and segments; export the drive alone.`,
  ).error;
}

type PointPart = 'trkpt' | 'rtept' | 'rpt';

function addPoint(reading: GpxReading, part: PointPart, element: XmlElement): Problem | undefined {
  const { route, segment, count } = reading;
  if (!route || !segment) return undefined;
  if (part === 'rtept') reading.routePoints++;
  if (part === 'rpt') count.shapePoints++;
  const position = readPosition(element.attributes);
  if (typeof position === 'string')
    return fail(
      'gpx.position',
      `Line ${element.line}: ${callPoint(route, part, reading.routePoints)}: ${position}; correct it or export the drive again.`,
    ).error;
  addPosition(segment, position.lat, position.lon);
  if (part !== 'rpt') reading.point = segment.lat.length - 1;
  if (part === 'rtept') reading.inRoutePoint = true;
  return undefined;
}

/** How a sentence calls the point that is being read. */
function callPoint(route: OpenRoute, part: PointPart, routePoints: number): string {
  const called = callRoute(route);
  if (part === 'rtept') return `${called}, point ${routePoints}`;
  if (part === 'rpt') return `${called}, a shape point of point ${routePoints}`;
  const positions = route.segments.at(-1)?.lat.length ?? 0;
  return `${called}, segment ${route.segments.length}, point ${positions + 1}`;
}

function addWaypoint(reading: GpxReading, { attributes, line }: XmlElement): void {
  const { count, doubts } = reading;
  count.waypoints++;
  const read = readPosition(attributes);
  reading.waypoint = typeof read === 'string' ? undefined : read;
  if (typeof read === 'string') doubts.badWaypoint(`waypoint ${count.waypoints} on line ${line}: ${read}`);
}

/** What is no number is left out: nothing is judged by it. */
function keepElevation({ segment, point }: GpxReading, written: string): void {
  const elevationM = written.trim() === '' ? Number.NaN : Number(written);
  if (!segment || !Number.isFinite(elevationM)) return;
  segment.elevationM ??= [];
  segment.elevationM[point] ??= elevationM;
}

function keepTime({ route, segment, point, doubts }: GpxReading, written: string): void {
  if (!route || !segment || written.trim() === '') return;
  const timeMs = readTimeMs(written);
  if (Number.isNaN(timeMs))
    doubts.badTime(
      `${quote(written)} in ${callRoute(route)}, segment ${route.segments.length}, position ${point + 1}`,
    );
  else if (Number.isNaN(segment.timeMs[point])) segment.timeMs[point] = timeMs;
}
