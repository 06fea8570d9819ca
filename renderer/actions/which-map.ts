import { given } from '../../geo/given.ts';
import type { Source } from '../../main/contract/source.ts';
import { type DriveWanted, isFile, type MapWanted, SHELF, sameSource } from './wanted.ts';

/** What the choice of a map rests on. */
export interface AtHand {
  /** the map that is open */
  readonly map: MapWanted | undefined;
  /** the drive that is open, and which track of it */
  readonly drive: { readonly source: Source; readonly taken: number } | undefined;
  /** how many maps are on the shelf */
  readonly shelfMaps: number;
}

/**
 * The map to be opened for a drive that comes without one: the shelf where no file of the user's own is open, and what is
 * open again where only a part of it was kept, about another drive. @returns undefined where the open map serves
 */
export function mapForDrive(drive: DriveWanted | undefined, atHand: AtHand): MapWanted | undefined {
  if (!drive) return undefined;
  const { map, shelfMaps } = atHand;
  const source = isFile(map?.source) || shelfMaps === 0 || drive.source.kind === 'sample' ? map?.source : SHELF;
  if (source === undefined) return undefined;
  const wanted = { source, about: drive.source, ...given({ track: drive.track }) };
  if (map === undefined || !sameSource(map.source, source)) return wanted;
  return map.about === undefined || isAbout(map, drive, atHand) ? undefined : wanted;
}

/** The shelf about a drive. */
export function shelfAbout({ source, track }: DriveWanted): MapWanted {
  return { source: SHELF, about: source, ...given({ track }) };
}

function isAbout({ about, track }: MapWanted, wanted: DriveWanted, { drive }: AtHand): boolean {
  if (about === undefined || !sameSource(about, wanted.source)) return false;
  // a map about the track that is driven unasked: the one that was taken then
  const unasked = drive && sameSource(drive.source, about) ? drive.taken : undefined;
  return wanted.track === track || (track === undefined && wanted.track === unasked);
}

/** Of a drive with more than this share off an open file the file is hardly the map. */
const MOSTLY = 0.5;

/** Whether most of a drive lies off the roads of the map it was followed on. */
export function isMostlyOff({ match, lengthM }: { match: { offMapM: number }; lengthM: number }): boolean {
  return match.offMapM > MOSTLY * lengthM;
}
