import type { TileFeatures } from '../../../geo/basemap/features.ts';
import type { Strip } from '../../../geo/drive/strip/strip.ts';
import type { LocalNote } from '../../../geo/notes/note.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Result } from '../../../geo/result.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import type { RequestOf, ValueOf } from '../../contract/calls.ts';
import type { FollowedDrive } from '../../contract/followed-drive.ts';
import type { MapChanges } from '../../contract/map-changes.ts';
import type { MapSummary } from '../../contract/map-summary.ts';
import type { Settings } from '../../contract/settings.ts';
import type { Work } from '../../contract/work.ts';
import type { HandedOver } from '../hand-over/hand-over.ts';
import type { HandedFromFiles, HandOverWork } from '../hand-over/hand-over-from-files.ts';
import type { KnownOf } from '../handed/known-of.ts';
import type { SheetAgain } from '../handed/out-sheets.ts';
import type { OpenDrive } from './drive-for-page.ts';

/** Drives to be compared on two shelves, and how each is checked: alike on both. */
export interface ToCompare extends RequestOf<'mapChanges'>, MadeWith {
  readonly drives: readonly (NamedFile & { readonly leaveAt?: string })[];
  readonly units: Units;
}

/** What a check, a plan or a way is made with besides what the page asks. */
interface MadeWith {
  /** ISO 8601 */
  readonly made: string;
  readonly localNotes?: readonly LocalNote[];
}

/** A file the engine may read. */
export interface NamedFile {
  readonly path: string;
  readonly name: string;
  /** of its bytes, where it was kept: another is refused */
  readonly sha256?: string;
}

export type MapToOpen = { file: NamedFile; shelf?: never } | { shelf: string; file?: never };

/** What the engine is asked. Everything here crosses a thread: plain data only. */
export interface EngineCalls {
  /**
   * Opens a map file, or the shelf in that folder. With `about`, only what lies about that drive is kept; of a shelf
   * without it nothing is but the base map. A failure leaves the open map as it is.
   */
  openMap: { request: MapToOpen & { about?: NamedFile }; value: MapSummary };
  /** The caller names the drive, so that a restarted engine knows it under the same name. */
  openDrive: {
    request: { driveId: string; file: NamedFile; track?: number } & Pick<OpenDrive, 'unread'>;
    value: FollowedDrive;
  };
  check: { request: RequestOf<'check'> & MadeWith; value: DriveReport };
  /** Checks anew and makes everything that the driver takes along. */
  handOver: {
    request: RequestOf<'handOver'> & MadeWith & { known: KnownOf } & Pick<Settings, 'firm' | 'before'>;
    value: HandedOver;
  };
  /** Checks a drive in a file anew, on the shelf, and makes everything that the driver takes along. Nothing open is touched. */
  handOverFile: { request: HandOverWork; value: HandedFromFiles };
  /** Checks a sheet's drive again, on the shelf: what is new or worse. Nothing open is touched. */
  sheetAgain: { request: SheetAgain; value: readonly string[] };
  tile: { request: RequestOf<'tile'>; value: TileFeatures };
  strip: { request: RequestOf<'strip'>; value: Strip };
  wayRound: { request: RequestOf<'wayRound'> & MadeWith; value: ValueOf<'wayRound'> };
  services: { request: RequestOf<'services'> & MadeWith; value: ValueOf<'services'> };
  /** Where the open map has no such name, the shelf of that folder is asked. */
  findPlaces: { request: RequestOf<'findPlaces'> & { shelf?: string }; value: ValueOf<'findPlaces'> };
  /** The caller names the drive. */
  planDrive: {
    request: RequestOf<'planDrive'> & MadeWith & { newId: string };
    value: ValueOf<'planDrive'>;
  };
  /** The caller names the changed drive. */
  takeWay: { request: RequestOf<'takeWay'> & { newId: string }; value: FollowedDrive };
  /** The nearest road of the open map at a place, for a note made there; nothing off any road. */
  roadAt: { request: Pick<LocalNote, 'at'>; value: Pick<LocalNote, 'osm' | 'road'> };
  notesForMappers: { request: { localNotes: readonly LocalNote[] }; value: { text: string } };
  /** Keeps the shelf as it is now open, so that it can be compared with what it will be; the one held before is let go. */
  holdShelf: { request: { shelf: string }; value: null };
  /** Compares the held shelf with what is there now, and lets it go. */
  compareHeld: { request: { shelf: string; asked: ToCompare }; value: MapChanges };
}
export type EngineCallName = keyof EngineCalls;

/** One question, its name tied to its own request. */
export type Ask<K extends EngineCallName = EngineCallName> = {
  readonly [N in K]: {
    readonly kind: 'ask';
    readonly id: number;
    readonly name: N;
    readonly request: EngineCalls[N]['request'];
  };
}[K];

export interface Cancel {
  readonly kind: 'cancel';
  readonly id: number;
}

export type ToEngine = Ask | Cancel;

export type FromEngine =
  | { readonly kind: 'progress'; readonly id: number; readonly progress: Work }
  | { readonly kind: 'reply'; readonly id: number; readonly result: Result<unknown> };

export interface EngineHooks {
  readonly signal: AbortSignal;
  onProgress(work: Work): void;
}

/** The same within the thread. */
export interface WorkHooks extends EngineHooks {
  /** Called every few milliseconds by work that lets no message in; throws when it was given up meanwhile. */
  lookUp(): void;
}

/** The engine's side of every call. */
export type EngineHandlers = {
  readonly [K in EngineCallName]: (
    request: EngineCalls[K]['request'],
    hooks: WorkHooks,
  ) => Promise<Result<EngineCalls[K]['value']>>;
};
