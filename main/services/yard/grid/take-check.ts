import { isDeepStrictEqual } from 'node:util';
import type { HandedFacts } from '../../../../geo/library/body/handed.ts';
import { driveReportSchema } from '../../../../geo/report/report.ts';
import { cellOf } from '../../../../geo/yard/cell.ts';
import { changedSince } from '../../../../geo/yard/handed/changed-since.ts';
import { DEFAULT_SETTINGS } from '../../../contract/default-settings.ts';
import { PROGRAM } from '../../../version.ts';
import { sha256Of } from '../../files/sha256.ts';
import { codeOf } from '../../files/system-error.ts';
import { partsOnShelf } from '../../shelf/parts-on-shelf.ts';
import { compareAndKeep } from './compare-and-keep.ts';
import { type GridDrive, type GridOf, type GridVehicle, judgeGrid } from './grid.ts';

/** A check that was handed over: what it was made from, and its report among the files. */
interface HandedCheck {
  readonly facts: HandedFacts;
  readonly files: Readonly<Record<string, string>>;
}

const NO_MARGINS = DEFAULT_SETTINGS.margins;

/**
 * Takes the check that a handing-over was made of as the grid's own, so that nobody is sent to check again what has
 * just been checked. Only one that the grid would have made alike: of the library's drive and vehicle, on the shelf's
 * maps of today, at the kept leave time and day, with the same notes and spare, and with no plate overloaded.
 */
export async function takeCheck(of: GridOf, handed: HandedCheck): Promise<void> {
  try {
    await take(of, handed);
  } catch (error) {
    // what was handed over is done: a cell that cannot be kept stays as it was
    if (codeOf(error) === undefined) throw error;
  }
}

async function take(of: GridOf, { facts, files }: HandedCheck): Promise<void> {
  const drive = of.drives.find(({ id }) => id === facts.drive);
  const vehicle = of.vehicles.find(({ id }) => id === facts.vehicle);
  const { box, mapKey } = facts;
  if (!drive || !vehicle || box === undefined || mapKey === undefined) return;
  if (!(await isAsGrid(of, facts, { drive, vehicle }))) return;
  const read = driveReportSchema.safeParse(JSON.parse(files['report.json'] ?? 'null'));
  if (!read.success) return;
  // a cell is judged on the plates: what is aboard counts only where it is over one
  const { load, ...report } = read.data;
  // what part of a damaged map was left out the grid judges for itself
  if ((load?.over ?? []).length > 0 || report.findings.some(({ kind }) => kind === 'incomplete')) return;
  const hooks = { hear() {}, signal: new AbortController().signal };
  await judgeGrid(
    { ...of, drives: [drive], vehicles: [vehicle] },
    'all',
    hooks,
    async (tasks, setup, { hear }) => {
      const keptAt = tasks[0]?.vehicles[0]?.keptAt;
      const kept = keptAt && (await compareAndKeep(keptAt, report, setup));
      const ids = { drive: drive.id, vehicle: vehicle.id };
      hear({ kind: 'cell', cell: { ...ids, cell: cellOf(report), map: mapKey, ...kept } });
      hear({ kind: 'done', drive: drive.id, box });
    },
  );
}

async function isAsGrid(
  of: GridOf,
  facts: HandedFacts,
  { drive, vehicle }: { readonly drive: GridDrive; readonly vehicle: GridVehicle },
): Promise<boolean> {
  const since = changedSince(
    facts,
    {
      card: vehicle.card,
      load: undefined,
      notes: of.notes,
      maps: await partsOnShelf(of.shelf),
      program: PROGRAM,
      day: {
        ...(drive.leaveAt !== undefined && { leaveAt: drive.leaveAt }),
        ...(drive.day && { plan: drive.day }),
      },
      gone: { vehicle: false, drive: false },
      moment: of.made,
    },
    sha256Of,
  );
  const { heightM, physicalWidthM } = facts.margins ?? NO_MARGINS;
  return (
    since.every((each) => each === 'load') &&
    isDeepStrictEqual({ heightM, physicalWidthM }, { ...(of.margins ?? NO_MARGINS) }) &&
    facts.country === of.country
  );
}
