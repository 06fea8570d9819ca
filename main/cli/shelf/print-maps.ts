import { sayOlderThanBefore } from '../../../geo/report/map-age.ts';
import { printBytes } from '../../../geo/units/print.ts';
import { clip, counted, listed, quote } from '../../../geo/units/text.ts';
import type { ListedMap } from '../../services/shelf/list-maps.ts';
import type { ImportedMap } from '../../services/shelf/shelf-work.ts';

export const EMPTY_SHELF =
  'Nothing is on the shelf. Put a map there with: lanegauge shelf import MAP.osm.pbf, or lanegauge shelf fetch --route DRIVE.gpx --by region\n';

/** A line or two for each map. */
export function printMaps(maps: readonly ListedMap[]): string {
  return maps.map(printMap).join('');
}

/** A map just taken in. */
export interface Imported extends ImportedMap {
  /** the one of its name that it took the place of */
  readonly replaced?: ListedMap;
}

/** The same for maps just taken in: which of them have not got the name wanted, and which took another's place. */
export function printImported(maps: readonly Imported[]): string {
  return maps
    .map(({ beside, replaced, ...map }) =>
      [
        printMap(map),
        ...(beside === undefined ? [] : [`  ${quote(beside)} lies in another place and stays as it was\n`]),
        ...(replaced === undefined ? [] : [sayReplaced(replaced)]),
      ].join(''),
    )
    .join('');
}

function sayReplaced({ dataDate }: ListedMap): string {
  const old = dataDate === undefined ? 'the map of no known date' : `the map of ${dataDate.slice(0, 10)}`;
  return `  takes the place of ${old}: check again what was checked on that (the Yard: lanegauge yard recheck; sheets handed out: lanegauge yard out)\n`;
}

function printMap(map: ListedMap): string {
  const { name, roads, bytes, dataDate, sources, state, newerBefore, around } = map;
  const age = dataDate === undefined ? 'of no known date' : `data of ${dataDate.slice(0, 10)}`;
  const from = sources.map((source) => clip(source.name)).join(', ');
  const damage =
    state === 'damaged'
      ? '\n  damaged: mend it with lanegauge shelf verify --repair, or import it again'
      : '';
  const bare = state === 'ready' && roads === 0 ? '\n  holds no road: no drive can be checked on it' : '';
  const older = newerBefore === undefined ? '' : `\n  ${sayOlderThanBefore([map], newerBefore)}`;
  const where = around === undefined ? '' : `around ${listed(around.map((place) => clip(place, 60)))}, `;
  return `${quote(name)}: ${where}${counted(roads, 'road')}, ${printBytes(bytes)}, ${age}${from === '' ? '' : `, from ${from}`}${damage}${bare}${older}\n`;
}
