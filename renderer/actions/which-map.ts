import type { Source } from '../../main/contract/source.ts';
import { type DriveWanted, isFile, type MapWanted, SHELF, sameSource } from './wanted.ts';

/** What the choice of a map rests on. */
interface AtHand {
  /** the map that is open */
  readonly map: MapWanted | undefined;
  /** how many maps are on the shelf */
  readonly shelfMaps: number;
}

/**
 * The map to be opened for a drive that comes without one: the shelf where no file of the user's own is open, and what is
 * open again where only a part of it was kept, about another drive. @returns undefined where the open map serves
 */
export function mapForDrive(
  drive: DriveWanted | undefined,
  { map, shelfMaps }: AtHand,
): MapWanted | undefined {
  if (!drive) return undefined;
  const isTheirs = isFile(map?.source) || drive.source.kind === 'sample';
  const source = isTheirs || shelfMaps === 0 ? map?.source : SHELF;
  if (source === undefined) return undefined;
  const isOpen = map !== undefined && sameSource(map.source, source);
  if (isOpen && (map.about === undefined ? source.kind !== 'shelf' : sameSource(map.about, drive.source)))
    return undefined;
  return { source, about: drive.source };
}

/**
 * The map that a plan is begun on: the shelf where no file of the user's own is open.
 * @param map open, or being opened
 */
export function mapForPlan({ map, shelfMaps }: AtHand): MapWanted | undefined {
  return shelfMaps === 0 || isFile(map?.source) ? map : { source: SHELF };
}

/** Edges of a map, degrees. */
interface Bounds {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
}

/** Whether a place lies off a map. */
export function isOffMap({ lat, lon }: { lat: number; lon: number }, bounds: Bounds | null): boolean {
  if (bounds === null) return true;
  const { south, north, west, east } = bounds;
  return lat < south || lat > north || lon < west || lon > east;
}

/** The shelf about a drive. */
export function shelfAbout(drive: Source): MapWanted {
  return { source: SHELF, about: drive };
}

/** Of a drive with more than this share off an open file the file is hardly the map. */
const MOSTLY = 0.5;

/** Whether most of a drive lies off the roads of the map it was followed on. */
export function isMostlyOff({ match, lengthM }: { match: { offMapM: number }; lengthM: number }): boolean {
  return match.offMapM > MOSTLY * lengthM;
}
