import type { DriveText } from '../draw/drives/make-drives.ts';
import type { Position } from '../draw/drives/positions.ts';
import { toDegrees } from '../draw/lines/plane.ts';
import { escapeXml } from './write-osm-xml.ts';

/** GPX 1.1. A track keeps its segments apart; a route has one. */
export function writeDrive(drive: DriveText): string {
  const [outer, inner, point] = drive.kind === 'track' ? ['trk', 'trkseg', 'trkpt'] : ['rte', '', 'rtept'];
  const lines = drive.segments.flatMap((segment) => {
    const positions = segment.map((position) => positionText(point, position, drive.startS));
    return inner === '' ? positions : [`<${inner}>`, ...positions, `</${inner}>`];
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="lanegauge sample-routes" xmlns="http://www.topografix.com/GPX/1/1">',
    `<metadata><name>${escapeXml(drive.name)}</name><desc>${escapeXml(drive.about)}</desc></metadata>`,
    `<${outer}>`,
    `<name>${escapeXml(drive.name)}</name>`,
    ...lines,
    `</${outer}>`,
    '</gpx>',
    '',
  ].join('\n');
}

function positionText(element: string, position: Position, startS: number | undefined): string {
  const { lat, lon } = toDegrees(position);
  const open = `<${element} lat="${lat.toFixed(6)}" lon="${lon.toFixed(6)}"`;
  if (position.timeS === undefined || startS === undefined) return `${open}/>`;
  const time = new Date((startS + position.timeS) * 1000).toISOString().replace('.000Z', 'Z');
  return `${open}><time>${time}</time></${element}>`;
}
