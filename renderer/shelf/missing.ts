import { distanceIn, type Units } from '../../geo/units/in-units.ts';
import { clip, listed } from '../../geo/units/text.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../main/contract/map-summary.ts';
import type { Source } from '../../main/contract/source.ts';
import { sameSource } from '../actions/wanted.ts';
import { isMostlyOff } from '../actions/which-map.ts';

/** What a drive lacks of its map. */
export interface Missing {
  /** metres of it without a map */
  readonly missingM: number;
  readonly lengthM: number;
  /** what there is holds main roads alone */
  readonly mainRoadsOnly: boolean;
  /**
   * where it is missing: from the shelf, from a shelf of which nothing could be read, from a file that is open, or
   * there is no map of the user's own at all
   */
  readonly from: 'shelf' | 'unread' | 'file' | 'nothing';
  /** maps of the shelf that are damaged: what is missing may stand in them */
  readonly damaged?: readonly string[];
}

/**
 * @param about the drive that the map was opened for: while another is being opened, nothing is told of the one shown
 * @param shelfMaps how many maps are on the shelf
 * @returns undefined where the map is whole, or the drive one of the sample's
 */
export function missingOf(
  { summary, source, about }: { summary: MapSummary; source: Source; about?: Source },
  drive: { followed: FollowedDrive; source: Source },
  shelfMaps = 0,
): Missing | undefined {
  // of a swapped drive no map is missing: the verdict says what is wrong with it
  if (drive.source.kind === 'sample' || drive.followed.match.swapped) return undefined;
  if (about && !sameSource(about, drive.source)) return undefined;
  const { shelf } = summary;
  if (shelf) {
    const { missingM, lengthM } = bareOf(shelf, drive.followed);
    const { mainRoadsOnly, damaged } = shelf;
    return missingM > 0 || mainRoadsOnly
      ? { missingM, lengthM, mainRoadsOnly, from: 'shelf', damaged }
      : undefined;
  }
  if (!isMostlyOff(drive.followed)) return undefined;
  const { match, lengthM } = drive.followed;
  // the sample's map stands in for a shelf that could not be read
  const instead = shelfMaps > 0 ? 'unread' : 'nothing';
  const from = source.kind === 'sample' ? instead : 'file';
  return { missingM: match.offMapM, lengthM, mainRoadsOnly: false, from };
}

/** So much off the roads is no yard or pitch. */
const STRETCH_M = 1000;

/** Of a file with several tracks the shelf tells of all of them, and only one is the drive. */
function bareOf({ bare, lengthM }: NonNullable<MapSummary['shelf']>, { tracks, ...drive }: FollowedDrive) {
  if (tracks.length === 1)
    return { missingM: bare.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0), lengthM };
  const { offMapM } = drive.match;
  return { missingM: offMapM > STRETCH_M ? offMapM : 0, lengthM: drive.lengthM };
}

/** How much is missing, in a sentence or two. */
export function sayMissing(
  { missingM, lengthM, mainRoadsOnly, from, damaged = [] }: Missing,
  units: Units,
): string {
  const missing = distanceIn(units, missingM);
  const all = distanceIn(units, lengthM);
  const none = missing === all;
  if (from === 'unread')
    return `No map on your shelf could be read for this drive of ${all}: all of it is unknown. First mend what is damaged, under Shelf.`;
  if (from === 'nothing') return `Nothing on your shelf covers this drive of ${all}: all of it is unknown.`;
  if (from === 'file')
    return none
      ? `The open map has none of this drive of ${all}: all of it is unknown.`
      : `The open map has no roads under ${missing} of this drive of ${all}: what is there is unknown.`;
  const main =
    'What your shelf has here are main roads alone: side roads, and what stands on them, are unknown.';
  if (missingM === 0) return main;
  if (damaged.length > 0)
    return `${missing} of this drive of ${all} (stretches of over 1 km) are not on your shelf, or cannot be read there: what is there is unknown. First mend ${listed(damaged.map((name) => clip(name, 60)))}, under Shelf.`;
  const say = none
    ? `None of this drive of ${all} is on your shelf: all of it is unknown.`
    : `${missing} of this drive of ${all} are not on your shelf: what is there is unknown.`;
  return mainRoadsOnly ? `${say} ${main}` : say;
}
