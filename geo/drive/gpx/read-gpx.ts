import { fail, ok, type Problem, type Result } from '../../result.ts';
import { gpxDoubts } from './gpx-doubts.ts';
import {
  carriesPositions,
  type GpxRole,
  hasPosition,
  holdsElementsOnly,
  isGpxElement,
  roleInside,
} from './gpx-names.ts';
import { refuseRoot, refuseText, refuseUndrivable } from './gpx-refusals.ts';
import {
  addPosition,
  callRoute,
  closeRoute,
  isDrivable,
  type OpenRoute,
  type OpenSegment,
  openSegment,
} from './gpx-tracks.ts';
import { quote, readPosition, readTimeMs } from './gpx-values.ts';
import type { RouteFile } from './route.ts';
import { walkXml, type XmlElement, type XmlVisitor } from './strict-xml.ts';

/** What an open element is to the reader: one of GPX's own, a text that is wanted, or nothing of interest. */
type Part = GpxRole | 'name' | 'time' | 'rpt' | 'plain' | 'foreign';

/** Far more tracks and segments than any planner writes; each costs memory, even an empty one. */
const MAX_PIECES = 100_000;

/**
 * Reads GPX 1.0 or 1.1 from decoded text, strictly: sound XML to its last byte, every position a number on Earth,
 * nothing skipped in silence. Vendors' shape points (`rpt` inside `rtept`) are positions of the route.
 *
 * @returns tracks before routes, each in the file's order, those without positions included so that numbers hold;
 * or what is wrong, with its line: damaged XML, DOCTYPE, another kind of file, a bad position, nothing to drive.
 */
export function readGpx(text: string): Result<RouteFile> {
  if (!/^[\uFEFF\s]*</u.test(text)) return refuseText(text);
  const reader = gpxReader();
  const walked = walkXml(text, reader);
  return walked.ok ? reader.finish() : walked;
}

function gpxReader(): XmlVisitor & { finish(): Result<RouteFile> } {
  const parts: Part[] = [];
  const routes: OpenRoute[] = [];
  const doubts = gpxDoubts();
  const count = { track: 0, route: 0, waypoints: 0, shapePoints: 0, pieces: 0 };
  let rootUri = '';
  let route: OpenRoute | undefined;
  let segment: OpenSegment | undefined;
  /** index of the point opened last, the one a time belongs to */
  let point = 0;
  let routePoints = 0;
  let inRoutePoint = false;
  let heard: string | undefined;
  let hearing = 0;

  function open(element: XmlElement): Problem | undefined {
    if (parts.length === 0) return openRoot(element);
    const part = partOf(element);
    if (typeof part !== 'string') return part;
    parts.push(part);
    if ((part === 'trk' || part === 'rte' || part === 'trkseg') && ++count.pieces > MAX_PIECES)
      return fail(
        'gpx.tooMany',
        `Line ${element.line}: the file has more than ${MAX_PIECES} tracks and segments; export the drive alone.`,
      ).error;
    switch (part) {
      case 'trk':
      case 'rte': {
        const kind = part === 'trk' ? 'track' : 'route';
        route = { kind, number: ++count[kind], name: undefined, segments: [] };
        routes.push(route);
        routePoints = 0;
        if (part === 'rte') openRouteSegment();
        return undefined;
      }
      case 'trkseg':
        openRouteSegment();
        return undefined;
      case 'trkpt':
      case 'rtept':
      case 'rpt':
        return addPoint(part, element);
      case 'wpt': {
        count.waypoints++;
        const wrong = readPosition(element.attributes);
        if (typeof wrong === 'string')
          doubts.badWaypoint(`waypoint ${count.waypoints} on line ${element.line}: ${wrong}`);
        return undefined;
      }
      case 'name':
      case 'time':
        heard = '';
        hearing = parts.length;
        return undefined;
      default:
        return undefined;
    }
  }

  function openRoot({ local, uri, attributes, line }: XmlElement): Problem | undefined {
    if (local !== 'gpx') return refuseRoot(local, line).error;
    const version = attributes['version'];
    if (version !== undefined && !/^\s*1\.[01]\s*$/u.test(version)) doubts.version(version);
    rootUri = uri;
    parts.push('gpx');
    return undefined;
  }

  function partOf({ local, uri, attributes, line }: XmlElement): Part | Problem {
    const parent = parts.at(-1);
    if (local === 'rpt' && inRoutePoint) return 'rpt';
    if (parent === 'foreign') return 'foreign';
    if (!isGpxElement(rootUri, uri)) {
      if (carriesPositions(local)) doubts.leftOut(`"${local}" on line ${line}`);
      return 'foreign';
    }
    if (local === 'extensions') return 'foreign';
    const role = roleInside(parent, local);
    if (role) return role;
    if (carriesPositions(local) || hasPosition(attributes))
      return fail(
        'gpx.misplaced',
        `Line ${line}: "${local.slice(0, 60)}" stands where GPX has no such element; export the drive again.`,
      ).error;
    if (local === 'name' && (parent === 'trk' || parent === 'rte') && route?.name === undefined)
      return 'name';
    if (local === 'time' && (parent === 'trkpt' || parent === 'rtept')) return 'time';
    return 'plain';
  }

  function openRouteSegment(): void {
    segment = openSegment();
    route?.segments.push(segment);
  }

  function addPoint(part: 'trkpt' | 'rtept' | 'rpt', element: XmlElement): Problem | undefined {
    if (!route || !segment) return undefined;
    if (part === 'rtept') routePoints++;
    if (part === 'rpt') count.shapePoints++;
    const position = readPosition(element.attributes);
    if (typeof position === 'string')
      return fail(
        'gpx.position',
        `Line ${element.line}: ${where(part)}: ${position}; correct it or export the drive again.`,
      ).error;
    addPosition(segment, position.lat, position.lon);
    if (part !== 'rpt') point = segment.lat.length - 1;
    if (part === 'rtept') inRoutePoint = true;
    return undefined;
  }

  function where(part: 'trkpt' | 'rtept' | 'rpt'): string {
    if (!route || !segment) return '';
    const called = callRoute(route);
    if (part === 'rtept') return `${called}, point ${routePoints}`;
    if (part === 'rpt') return `${called}, a shape point of point ${routePoints}`;
    return `${called}, segment ${route.segments.length}, point ${segment.lat.length + 1}`;
  }

  function text(piece: string, line: number): Problem | undefined {
    if (heard !== undefined) {
      heard += piece;
      return undefined;
    }
    // a point that lost its first bracket is text
    if (!holdsElementsOnly(parts.at(-1)) || piece.trim() === '') return undefined;
    return fail(
      'gpx.misplaced',
      `Line ${line}: text ${quote(piece)} stands between the elements; the file may be damaged, export the drive again.`,
    ).error;
  }

  function close(): void {
    const depth = parts.length;
    const part = parts.pop();
    if (part === 'rtept') inRoutePoint = false;
    if (heard === undefined || depth !== hearing) return;
    if (part === 'name' && route) route.name = heard;
    if (part === 'time') keepTime(heard);
    heard = undefined;
  }

  function keepTime(written: string): void {
    if (!route || !segment || written.trim() === '') return;
    const timeMs = readTimeMs(written);
    if (Number.isNaN(timeMs)) {
      doubts.badTime(
        `${quote(written)} in ${callRoute(route)}, segment ${route.segments.length}, position ${point + 1}`,
      );
    } else if (Number.isNaN(segment.timeMs[point])) {
      segment.timeMs[point] = timeMs;
    }
  }

  function finish(): Result<RouteFile> {
    const closed = [...routes]
      .sort((a, b) => Number(b.kind === 'track') - Number(a.kind === 'track'))
      .map(closeRoute);
    if (!closed.some(isDrivable)) return refuseUndrivable(closed, count.waypoints);
    const { waypoints, shapePoints } = count;
    return ok({ routes: closed, waypoints, shapePoints, notes: doubts.say(routes) });
  }

  return { open, text, close, finish };
}
