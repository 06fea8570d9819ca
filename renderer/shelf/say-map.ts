import { dayInWords } from '../../geo/clock/print-dates.ts';
import { sayMapAge, sayOlderThanBefore } from '../../geo/report/map-age.ts';
import { printBytes } from '../../geo/units/print.ts';
import { clip, listed } from '../../geo/units/text.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { ShelfMap } from '../../main/contract/shelf.ts';

/** `Around Oakham: 12,345 roads, 41 MB` */
export function sayHolds({ roads, bytes, mainRoadsOnly, around }: ShelfMap): string {
  const where = around ? `Around ${listed(around.map((place) => clip(place, 60)))}: ` : '';
  const what = roads === 1 ? 'road' : 'roads';
  const alone = mainRoadsOnly ? ', main roads alone' : '';
  return `${where}${roads.toLocaleString('en-GB')} ${what}${alone}, ${printBytes(bytes)}`;
}

/** How old its data is, and whether that is to be doubted. @param now ISO 8601 */
export function sayAge({ dataDate }: Pick<ShelfMap, 'dataDate'>, now: string) {
  return sayMapAge([{ dataDate }], now);
}

/** That it took the place of newer data; undefined where it did not. */
export function sayOlder(map: Pick<ShelfMap, 'dataDate' | 'newerBefore'>): string | undefined {
  return map.newerBefore === undefined ? undefined : sayOlderThanBefore([map], map.newerBefore);
}

/** Where it came from, and since when it is here. */
export function sayOrigin({ origin, sources, imported }: ShelfMap): string {
  const since = dayInWords(imported.slice(0, 10));
  const files = listed(sources.map(({ name }) => clip(name, 60)));
  switch (origin) {
    case 'line':
      return `Fetched along a drive, ${since}`;
    case 'region':
      return `Fetched as a whole region, ${since}${files === '' ? '' : `: ${files}`}`;
    case 'file':
      return `From ${files === '' ? 'a file' : files}, taken in ${since}`;
    case 'unknown':
      return `Here since ${since}`;
  }
}

/** Why a damaged map cannot be mended by one press, and what helps. */
export function sayMend(
  from: Exclude<NonNullable<ShelfMap['mendFrom']>, 'files'>,
  sources: ShelfMap['sources'],
): string {
  const files = listed(sources.map(({ name }) => clip(name, 60)));
  switch (from) {
    case 'copy':
      return `It was made from ${files}. This window cannot see where your files lie: choose it again, and the map is made anew.`;
    case 'fetched':
      return 'What was fetched for it was not kept: fetch it again for a drive there, or choose a file that you have of it.';
    case 'gone':
      return `${files}, which it was made from, is no longer where it was: choose it, and the map is made anew.`;
  }
}

/** Names that one line can hold. */
const NAMED = 2;

/** The maps of the shelf that a drive is held against: `From your shelf: Rutland, data of 2026-05-01`; undated without a drive. */
export function sayFromShelf({ maps, sources }: NonNullable<FollowedDrive['shelf']>): string {
  if (maps.length === 0) return 'From your shelf: nothing near this drive';
  const named = maps.slice(0, NAMED).map((name) => clip(name, 30));
  const names = maps.length > NAMED ? [...named, `${maps.length - NAMED} more`] : named;
  if (sources.length === 0) return `From your shelf: ${listed(names)}`;
  const days = sources.map(({ dataDate }) => dataDate?.slice(0, 10));
  const oldest = days.filter((day) => day !== undefined).sort()[0];
  const undated = oldest === undefined || days.some((day) => day === undefined);
  return `From your shelf: ${listed(names)}, ${undated ? 'its date is not known' : `data of ${oldest}`}`;
}
