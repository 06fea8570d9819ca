import { printBytes } from '../../../geo/units/print.ts';
import { counted, quote } from '../../../geo/units/text.ts';
import type { ListedMap } from '../../services/shelf/list-maps.ts';

export const EMPTY_SHELF =
  'Nothing is on the shelf. Put a map there with: lanegauge shelf import MAP.osm.pbf, or lanegauge shelf fetch --route DRIVE.gpx --by region\n';

/** A line or two for each map. */
export function printMaps(maps: readonly ListedMap[]): string {
  return maps.map(printMap).join('');
}

function printMap({ name, roads, bytes, dataDate, sources, state }: ListedMap): string {
  const age = dataDate === undefined ? 'of no known date' : `data of ${dataDate.slice(0, 10)}`;
  const from = sources.map((source) => source.name).join(', ');
  const damage =
    state === 'damaged'
      ? '\n  damaged: mend it with lanegauge shelf verify --repair, or import it again'
      : '';
  return `${quote(name)}: ${counted(roads, 'road')}, ${printBytes(bytes)}, ${age}${from === '' ? '' : `, from ${from}`}${damage}\n`;
}
