import { join } from 'node:path';
import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { type DriveBody, driveName } from '../../../geo/library/body/drive.ts';
import type { Item } from '../../../geo/library/item.ts';
import { byName } from '../../../geo/yard/by-name.ts';
import type { Acknowledgement } from '../../../geo/yard/seen-changes.ts';
import { DEFAULT_SETTINGS } from '../../contract/default-settings.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import type { Settings } from '../../contract/settings.ts';
import type { Library } from '../library/library.ts';
import { notesOf } from '../library/local-notes.ts';
import { shelfFolder } from '../shelf/where-shelf.ts';
import { columnsOf } from './columns.ts';
import type { GridDrive, GridOf, GridVehicle } from './grid/grid.ts';

/** What a grid of the library is made from. */
export interface YardAsked {
  readonly library: Library;
  readonly settings: Pick<Settings, 'margins' | 'country' | 'units'>;
  readonly dataFolder: string;
  /** what the fleet begins with, as long as no vehicle of it is in the library */
  readonly fleet?: readonly FleetVehicle[];
  now(): Date;
}

/** Where what the checks of drives told is kept on this computer. */
export function keptFolder(dataFolder: string): string {
  return join(dataFolder, 'yard');
}

/** The library's drives and vehicles as a grid that is kept on this computer, the drives by name. */
export function gridOfLibrary(asked: YardAsked): GridOf & { readonly kept: string } {
  const { library, dataFolder } = asked;
  return {
    ...gridOf(asked, columnsOf(library, asked.fleet)),
    kept: keptFolder(dataFolder),
    acknowledged: acknowledgements(library),
  };
}

/** The library's drives with other vehicles; nothing of it is kept. */
export function gridOf(
  { library, settings, dataFolder, now }: YardAsked,
  vehicles: readonly GridVehicle[],
): GridOf {
  return {
    drives: library
      .list('drive')
      .flatMap((item) => gridDrive(library, item))
      .sort(byName),
    vehicles,
    notes: notesOf(library),
    shelf: shelfFolder(dataFolder),
    units: settings.units,
    made: now().toISOString(),
    ...given({ margins: marginsOf(settings), country: settings.country ?? undefined }),
  };
}

/** What is asked for by itself is left out, so that a cell is the same whoever asks. */
function marginsOf({ margins }: YardAsked['settings']): Settings['margins'] | undefined {
  const { heightM, physicalWidthM } = DEFAULT_SETTINGS.margins;
  const isUsual = margins.heightM === heightM && margins.physicalWidthM === physicalWidthM;
  return isUsual ? undefined : margins;
}

/** Of several versions the first stands in until a person has chosen. */
function gridDrive(library: Library, { id, versions: [version] }: Item<'drive'>): GridDrive[] {
  if (version === undefined) return [];
  const { gpx, file, track, leaveAt, plan }: DriveBody = version.body;
  return [
    {
      id,
      name: driveName(version.body),
      file: { path: library.pathOf('gpx', gpx), name: file, sha256: gpx },
      gpx,
      track,
      ...given({ leaveAt, day: plan && keptDay(plan).day }),
    },
  ];
}

function acknowledgements(library: Library): Acknowledgement[] {
  return library.list('seen').flatMap(({ id, versions: [version] }) => {
    if (version === undefined) return [];
    const { drive, vehicle, changes } = version.body;
    const seen = changes.map(({ kind, finding, ...more }) => ({
      kind,
      finding,
      ...(typeof more['mark'] === 'string' ? { mark: more['mark'] } : {}),
    }));
    return [{ id, drive, vehicle, changes: seen }];
  });
}
