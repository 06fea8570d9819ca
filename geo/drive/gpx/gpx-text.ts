import { given } from '../../given.ts';
import { plainLine } from '../../units/text.ts';
import { printTime } from './gpx-values.ts';
import type { Route, RouteSegment, RouteStop } from './route.ts';
import { MOST_STOPS, writeStopMark, writeTurnMark } from './stop-mark.ts';

/** A place written beside the track. */
export interface Waypoint {
  readonly lat: number;
  readonly lon: number;
  readonly name: string;
  /** goes to the device */
  readonly comment?: string;
  /** for who reads the file */
  readonly description?: string;
  /** symbol name for the device */
  readonly symbol?: string;
  /** what sort of place it is */
  readonly type?: string;
  /** the vehicle stops there, which a reader of this program may count on */
  readonly stop?: Pick<RouteStop, 'atM'>;
}

/** A drive to be written, its stops as waypoints; its description is for who reads the file. */
export type WrittenRoute = Pick<Route, 'name' | 'segments' | 'stops' | 'turnAtEnd'> & {
  readonly description?: string;
};

/**
 * A drive as GPX 1.1: one track with its segments, and waypoints. Coordinates have 7 decimals (about 1 cm).
 * Whether it can be read again is for the caller to see to.
 */
export function gpxText(route: WrittenRoute, waypoints: readonly Waypoint[], creator: string): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="1.1" creator="${escapeXml(creator)}" xmlns="http://www.topografix.com/GPX/1/1">`,
    ...withFewMarks([...waypoints, ...stopsLeft(route, waypoints)]).map(writeWaypoint),
    '<trk>',
    `<name>${escapeXml(route.name)}</name>`,
    ...(route.description === undefined ? [] : [`<desc>${escapeXml(route.description)}</desc>`]),
    ...(route.turnAtEnd ? [writeTurnMark()] : []),
    ...route.segments.map(writeSegment),
    '</trk>',
    '</gpx>',
    '',
  ].join('\n');
}

/** The drive's stops that none of the waypoints stands for. */
function stopsLeft({ stops = [] }: WrittenRoute, waypoints: readonly Waypoint[]): Waypoint[] {
  const told = new Set(
    waypoints.flatMap((one) => (one.stop === undefined ? [] : [writePlace(one.lat, one.lon)])),
  );
  return stops.flatMap(({ lat, lon, atM }, i) =>
    told.has(writePlace(lat, lon))
      ? []
      : [{ lat, lon, name: `STOP ${i + 1}`, symbol: 'Flag', type: 'Stop', stop: given({ atM }) }],
  );
}

/** No more are marked than a reader counts. */
function withFewMarks(waypoints: readonly Waypoint[]): Waypoint[] {
  let marks = 0;
  return waypoints.map(({ stop, ...rest }) =>
    stop === undefined || ++marks > MOST_STOPS ? rest : { ...rest, stop },
  );
}

function writeSegment({ lat, lon, timeMs, elevationM }: RouteSegment): string {
  const points = Array.from(lat, (_, i) => {
    const place = writePlace(lat[i]!, lon[i]!);
    const [time, elevation] = [timeMs[i]!, elevationM?.[i] ?? Number.NaN];
    // in the order the GPX 1.1 schema asks for
    const inside = [
      ...(Number.isFinite(elevation) ? [`<ele>${printDecimal(elevation)}</ele>`] : []),
      ...(Number.isFinite(time) ? [`<time>${printTime(time)}</time>`] : []),
    ].join('');
    return inside === '' ? `<trkpt ${place}/>` : `<trkpt ${place}>${inside}</trkpt>`;
  });
  return ['<trkseg>', ...points, '</trkseg>'].join('\n');
}

/** As a decimal of XML Schema, which knows no exponent. */
function printDecimal(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(7) : text;
}

/** Children in the order the GPX 1.1 schema asks for: name, cmt, desc, sym, type, extensions. */
function writeWaypoint({ lat, lon, name, comment, description, symbol, type, stop }: Waypoint): string {
  const children = { name, cmt: comment, desc: description, sym: symbol, type };
  const written = Object.entries(children).map(([tag, text]) =>
    text === undefined ? '' : `<${tag}>${escapeXml(text)}</${tag}>`,
  );
  const mark = stop === undefined ? '' : writeStopMark(stop);
  return `<wpt ${writePlace(lat, lon)}>${written.join('')}${mark}</wpt>`;
}

function writePlace(lat: number, lon: number): string {
  return `lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}"`;
}

/** Text as XML holds it, without what XML cannot hold: control characters, half characters, U+FFFE and U+FFFF. */
function escapeXml(text: string): string {
  return plainLine(text)
    .replace(/[\p{Surrogate}\uFFFE\uFFFF]/gu, '\uFFFD')
    .replace(/&/gu, '&amp;')
    .replace(/</gu, '&lt;')
    .replace(/>/gu, '&gt;')
    .replace(/"/gu, '&quot;');
}
