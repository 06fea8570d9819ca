import type { CheckInput } from '../../../geo/check.ts';
import type { Drive } from '../../../geo/drive/drive.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { countPositions } from '../../../geo/drive/gpx/route-length.ts';
import { matchLengths } from '../../../geo/drive/match-lengths.ts';
import { given } from '../../../geo/given.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { FollowedDrive } from '../../contract/followed-drive.ts';
import { legsForPage } from './legs-for-page.ts';

/** A drive followed on the open map. */
export interface OpenDrive {
  readonly route: Route;
  /** file name only */
  readonly file: string;
  readonly drive: Drive;
  /** what it was followed on */
  readonly roads: Roads;
  readonly notes: readonly string[];
  /** no road lies under it, and roads would with latitude and longitude swapped */
  readonly swapped?: true;
  /** a sentence, where a day was kept with it that cannot be read */
  readonly unread?: string;
  /** of one that was laid out: places between where the vehicle has business */
  readonly stops?: NonNullable<CheckInput['stops']>;
  /** SHA-256 of the file it was read from, and the 1-based place in it; a drive that was changed or laid out has none */
  readonly origin?: { readonly gpx: string; readonly track: number };
}

/** What the page is told of a drive: its legs on the map it was followed on, and all tracks of its file. */
export function driveForPage(
  driveId: string,
  { route, file, drive, roads, notes, swapped, stops = route.stops ?? [] }: OpenDrive,
  routes: readonly Route[],
): FollowedDrive {
  return {
    driveId,
    name: route.name,
    file,
    tracks: routes.map((each) => ({
      kind: each.kind,
      number: each.number,
      name: each.name,
      positions: countPositions(each),
    })),
    taken: routes.indexOf(route) + 1,
    lengthM: drive.lengthM,
    legs: legsForPage(drive, roads),
    guessed: [...drive.guessed],
    doubtful: [...drive.doubtful],
    match: { ...matchLengths(drive), ...given({ swapped }) },
    notes: [...notes],
    ...(stops.length > 0 && { stops: stops.map(({ lat, lon, atM }) => ({ lat, lon, ...given({ atM }) })) }),
    ...given({ turnAtEnd: route.turnAtEnd }),
  };
}
