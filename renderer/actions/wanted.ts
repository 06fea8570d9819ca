import { given } from '../../geo/given.ts';
import type { Description, Sample } from '../../main/contract/description.ts';
import type { AddedFile, Recent, Source } from '../../main/contract/source.ts';
import type { Session } from './session.ts';

export interface MapWanted {
  readonly source: Source;
  /** keep only what lies about this drive: for maps too large to hold whole */
  readonly about?: Source;
  /** its name, where it is a drive's own map: without it the drive is opened on another */
  readonly ownOf?: string;
}
export interface DriveWanted {
  readonly source: Source;
  /** 1-based place among the file's tracks */
  readonly track?: number;
}
/** What is to be opened; what is left out stays as it is. */
export interface Wanted {
  readonly map?: MapWanted;
  readonly drive?: DriveWanted;
}

/** A map file of this size is held whole; of a larger one what lies about the drive. Bytes. */
const WHOLE_MAP_BYTES = 150 * 1024 * 1024;

/** The first map and the first drive among them. @param open the drive that is open, for a map without one */
export function wantedAdded(added: readonly AddedFile[], open?: Source): Wanted {
  const map = added.find(({ use }) => use === 'map');
  const drive = added.find(({ use }) => use === 'drive');
  return given({
    map: map && mapWanted(map, drive?.source ?? open),
    drive: drive && { source: drive.source },
  });
}

function mapWanted({ source, bytes }: AddedFile, about: Source | undefined): MapWanted {
  return bytes > WHOLE_MAP_BYTES && about ? { source, about } : { source };
}

/** A drive that comes with the program, on its own map. */
export function wantedSample(sample: Sample, drive: string): Wanted {
  return {
    map: { source: { kind: 'sample', id: sample.map } },
    drive: { source: { kind: 'sample', id: drive } },
  };
}

/** Files named at the start; what they leave open is as before a reload, as the user left it, as last opened, or the sample. */
export function wantedAtStart(found: Description, session: Session): Wanted {
  const before = wantedAsBefore(found, session);
  const map = found.opened.find(({ use }) => use === 'map');
  const drive = found.opened.find(({ use }) => use === 'drive');
  if (map && !drive) return wantedAdded([map]);
  if (!drive) return before;
  if (map) return wantedAdded([map, drive]);
  const under = found.shelfMaps > 0 && !isFile(before.map?.source) ? { source: SHELF } : before.map;
  const isPart = under?.source.kind === 'shelf' || under?.about !== undefined;
  return {
    ...given({ map: under && { source: under.source, ...(isPart ? { about: drive.source } : {}) } }),
    drive: { source: drive.source },
  };
}

function wantedAsBefore({ sample, recents, shelfMaps, settings }: Description, session: Session): Wanted {
  if (session.map) return { map: session.map, ...given({ drive: session.drive }) };
  const left = settings.left?.drive;
  if (left && shelfMaps > 0) {
    const source = { kind: 'library', id: left.id } as const;
    return { map: { source: SHELF, about: source }, drive: { source, track: left.track } };
  }
  const map = recents.find(({ use }) => use === 'map');
  const drive = recents.find(({ use }) => use === 'drive');
  if (drive?.map?.source) return wantedRecent(drive, { shelfMaps });
  if (map && drive) {
    const source = { kind: 'recent', id: drive.id } as const;
    return { map: { source: { kind: 'recent', id: map.id }, about: source }, drive: { source } };
  }
  if (drive && shelfMaps > 0) return wantedRecent(drive, { shelfMaps });
  return wantedSample(sample, sample.defaultDrive);
}

/** What a drive opened before finds at hand. */
interface AtHand {
  /** the open map */
  readonly open?: Source | undefined;
  /** how many maps are on the shelf */
  readonly shelfMaps: number;
}

/**
 * A drive opened before, on the map it was held against then; on the open one where that is the same, or not known. The
 * sample's map was never that of a drive of the user's own: the shelf is, as soon as there is one.
 */
export function wantedRecent({ id, map }: Recent, { open, shelfMaps }: AtHand): Wanted {
  const source = { kind: 'recent', id } as const;
  const own = map?.source;
  if (shelfMaps > 0 && (own ? own.kind === 'sample' : !isFile(open)))
    return { map: { source: SHELF, about: source }, drive: { source } };
  if (own === undefined || (open && sameSource(own, open))) return { drive: { source } };
  const about = own.kind === 'sample' ? undefined : source;
  return { map: { source: own, ownOf: map?.name ?? '', ...given({ about }) }, drive: { source } };
}

/** All maps of the shelf. */
export const SHELF: Source = { kind: 'shelf' };

/** Whether a map is a file of the user's own: it stays until another is chosen. */
export function isFile(map: Source | undefined): boolean {
  return map !== undefined && map.kind !== 'sample' && map.kind !== 'shelf';
}

/** Whether two sources name the same file. */
export function sameSource(a: Source, b: Source): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
