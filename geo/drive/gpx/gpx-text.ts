import { plainLine } from '../../units/text.ts';
import { printTime } from './gpx-values.ts';
import type { Route, RouteSegment } from './route.ts';

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
}

/** A drive to be written; its description is for who reads the file. */
export type WrittenRoute = Pick<Route, 'name' | 'segments'> & { readonly description?: string };

/**
 * A drive as GPX 1.1: one track with its segments, and waypoints. Coordinates have 7 decimals (about 1 cm).
 * Whether it can be read again is for the caller to see to.
 */
export function gpxText(route: WrittenRoute, waypoints: readonly Waypoint[], creator: string): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="1.1" creator="${escapeXml(creator)}" xmlns="http://www.topografix.com/GPX/1/1">`,
    ...waypoints.map(writeWaypoint),
    '<trk>',
    `<name>${escapeXml(route.name)}</name>`,
    ...(route.description === undefined ? [] : [`<desc>${escapeXml(route.description)}</desc>`]),
    ...route.segments.map(writeSegment),
    '</trk>',
    '</gpx>',
    '',
  ].join('\n');
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

/** Children in the order the GPX 1.1 schema asks for: name, cmt, desc, sym, type. */
function writeWaypoint({ lat, lon, name, comment, description, symbol, type }: Waypoint): string {
  const children = { name, cmt: comment, desc: description, sym: symbol, type };
  const written = Object.entries(children).map(([tag, text]) =>
    text === undefined ? '' : `<${tag}>${escapeXml(text)}</${tag}>`,
  );
  return `<wpt ${writePlace(lat, lon)}>${written.join('')}</wpt>`;
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
