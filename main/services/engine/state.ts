import { fail, ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { OpenShelf } from '../shelf/open-shelf.ts';
import type { OpenDrive } from './drive-for-page.ts';
import type { Tiles } from './tiles.ts';

/** What the engine holds: one open map, and the drives followed on it. */
export interface EngineState {
  map: Roads | undefined;
  /** what the open map was read from, as it was then */
  mapFrom: string | undefined;
  /** of the open file only what lies near a drive was kept */
  mapInPart: boolean;
  /** makes the base map ready: not before a tile is asked for */
  tiles: (() => Tiles) | undefined;
  cut: Tiles | undefined;
  /** what the open map is read from, where that is the shelf */
  shelf: OpenShelf | undefined;
  readonly drives: Map<string, OpenDrive>;
}

const NOT_OPEN = 'That drive is no longer open. Open it again.';

/** An open drive by its id; a sentence where it is open no more. */
export function findDrive({ map, drives }: EngineState, driveId: string): Result<OpenDrive> {
  const opened = drives.get(driveId);
  if (!map) return fail('no-map', NOT_OPEN);
  return opened ? ok(opened) : fail('no-drive', NOT_OPEN);
}
