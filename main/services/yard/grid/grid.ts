import { rename } from 'node:fs/promises';
import type { DayPlan } from '../../../../geo/day/plan.ts';
import { given } from '../../../../geo/given.ts';
import { append } from '../../../../geo/lists.ts';
import type { LocalNote } from '../../../../geo/notes/note.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import type { Box } from '../../../../geo/roads/box.ts';
import type { Units } from '../../../../geo/units/in-units.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import type { Cell } from '../../../../geo/yard/cell.ts';
import { hashOf, notesAbout } from '../../../../geo/yard/fingerprints.ts';
import { type MadeOf, type Stale, staleOf } from '../../../../geo/yard/made-of.ts';
import { mapKey } from '../../../../geo/yard/map-key.ts';
import { type Acknowledgement, stillToSee } from '../../../../geo/yard/seen-changes.ts';
import type { Settings } from '../../../contract/settings.ts';
import { PROGRAM } from '../../../version.ts';
import { sha256Of } from '../../files/sha256.ts';
import { codeOf, messageOf } from '../../files/system-error.ts';
import { partsOnShelf } from '../../shelf/parts-on-shelf.ts';
import { judgeInThreads } from './judge-in-threads.ts';
import { type KeptCell, type KeptDrive, keptAt, readKeptDrive, writeKeptDrive } from './kept-cells.ts';
import type { DriveTask, JudgedCell } from './messages.ts';

/** A row of the grid. */
export interface GridDrive {
  readonly id: string;
  readonly name: string;
  /** where its GPX lies, what the user calls the file, and the SHA-256 of its bytes */
  readonly file: DriveTask['file'];
  readonly gpx: string;
  /** 1-based place among the file's tracks */
  readonly track: number;
  readonly leaveAt?: string;
  /** its stops shift all that is passed after them */
  readonly day?: DayPlan;
}

/** A column of the grid. */
export interface GridVehicle {
  readonly id: string;
  readonly card: VehicleCard;
}

/** What a grid is made from. */
export interface GridOf {
  readonly drives: readonly GridDrive[];
  readonly vehicles: readonly GridVehicle[];
  readonly notes: readonly LocalNote[];
  /** changes that people have seen, on whatever computer */
  readonly acknowledged?: readonly Acknowledgement[];
  /** the shelf's folder */
  readonly shelf: string;
  /** where cells are kept, on this computer; without it nothing is kept */
  readonly kept?: string;
  readonly margins?: Settings['margins'];
  readonly country?: string;
  readonly units: Units;
  /** the moment it is looked at, ISO 8601 */
  readonly made: string;
}

export interface GridCell {
  readonly drive: string;
  readonly vehicle: string;
  readonly cell: Cell;
  /** why a check would say otherwise today */
  readonly stale: readonly Stale[];
  /** what is otherwise than a person has seen it */
  readonly changes: KeptCell['changes'];
}

/** What is heard while a grid is judged. */
export type GridNews =
  | { readonly kind: 'cell'; readonly cell: GridCell }
  | { readonly kind: 'failed'; readonly drive: string; readonly say: string };

/** The cells as they were last judged, stale ones marked; what was never judged is absent. */
export async function knownCells(of: GridOf): Promise<GridCell[]> {
  const cells: GridCell[] = [];
  await tellKnown(of, (known) => append(cells, known));
  return cells;
}

/** The same drive by drive. @param signal where nobody wants the rest any more */
export async function tellKnown(
  of: GridOf,
  hear: (cells: readonly GridCell[]) => void,
  signal?: AbortSignal,
): Promise<void> {
  if (of.kept === undefined) return;
  const parts = await partsOnShelf(of.shelf);
  for (const drive of of.drives) {
    if (signal?.aborted) return;
    const known = await readKeptDrive(of.kept, drive.id);
    if (known === undefined) continue;
    const makes = makesOf(of, drive, parts, known.box);
    const cells: GridCell[] = [];
    for (const vehicle of of.vehicles) {
      const kept = known.cells[vehicle.id];
      const stale = kept && staleOf(kept.madeOf, makes(vehicle));
      if (kept === undefined || stale === undefined) continue;
      const pair = { drive: drive.id, vehicle: vehicle.id };
      const { changes, answered } = stillToSee(kept.changes, acknowledgedOf(of, pair), kept.settled);
      // seen elsewhere: what newer reports are held against is no longer the one from before
      if (answered.length > 0 && changes.length === 0)
        await acceptChanges(of.kept, pair, answered).catch(() => {});
      cells.push({ ...pair, cell: kept.cell, stale, changes: [...changes] });
    }
    if (cells.length > 0) hear(cells);
  }
}

function acknowledgedOf(
  { acknowledged = [] }: GridOf,
  { drive, vehicle }: { readonly drive: string; readonly vehicle: string },
): readonly Acknowledgement[] {
  return acknowledged.filter((each) => each.drive === drive && each.vehicle === vehicle);
}

/** Which cells are judged: those that never were, the stale ones too, or every one. */
export type Which = 'missing' | 'stale' | 'all';

/**
 * Judges cells. Each is heard of as it is done, and kept.
 * @param judge does the work
 * @returns how many were judged; a sentence where the shelf holds nothing or nothing could be kept
 */
export async function judgeGrid(
  of: GridOf,
  which: Which,
  hooks: { hear(news: GridNews): void; readonly signal: AbortSignal },
  judge: typeof judgeInThreads = judgeInThreads,
): Promise<Result<number>> {
  try {
    const parts = await partsOnShelf(of.shelf);
    if (parts.length === 0)
      return fail(
        'shelf.empty',
        'No map that can be read is on the shelf: nothing can be checked. Import a map there, or fetch the map of a drive.',
      );
    const known = which === 'all' ? [] : await knownCells(of);
    const fresh = known.filter(({ stale }) => which === 'missing' || stale.length === 0);
    const tasks = tasksOf(of, fresh);
    const keep = keeper(of, parts, await settledOf(of, tasks));
    let judged = 0;
    const setup = {
      shelf: of.shelf,
      notes: of.notes,
      units: of.units,
      made: of.made,
      ...given({ margins: of.margins, country: of.country }),
    };
    const endings: Promise<void>[] = [];
    // where a drive's cells could not be kept, the others go on; it is said in the end
    const unkept: string[] = [];
    const broken: unknown[] = [];
    await judge(tasks, setup, {
      signal: hooks.signal,
      hear(news) {
        if (news.kind === 'failed') hooks.hear(news);
        else if (news.kind === 'done')
          endings.push(
            keep.end(news.drive, news.box).catch((error: unknown) => {
              if (codeOf(error) === undefined) broken.push(error);
              else unkept.push(messageOf(error));
            }),
          );
        else {
          judged++;
          if (news.cell.unkept !== undefined) unkept.push(news.cell.unkept);
          hooks.hear({ kind: 'cell', cell: keep.take(news.cell) });
        }
      },
    });
    await Promise.all(endings);
    if (broken.length > 0) throw broken[0];
    if (unkept[0] !== undefined) return failUnkept(unkept[0]);
    return hooks.signal.aborted ? fail('cancelled', 'Cancelled.') : ok(judged);
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return failUnkept(messageOf(error));
  }
}

function failUnkept(why: string) {
  return fail(
    'yard.unwritable',
    `What was checked is shown, but could not be kept: ${why}. Make room, and check again: else it is checked anew at the next start.`,
  );
}

/**
 * What was otherwise has been seen: from now on the newest report is what newer ones are compared with.
 * @param answered ids of the acknowledgements that say so
 */
export async function acceptChanges(
  folder: string,
  { drive, vehicle }: { readonly drive: string; readonly vehicle: string },
  answered: readonly string[],
): Promise<void> {
  const known = await readKeptDrive(folder, drive);
  const cell = known?.cells[vehicle];
  if (known === undefined || cell === undefined) return;
  const { seen, newest } = keptAt(folder, drive, vehicle);
  await rename(newest, seen).catch(() => {});
  const settled = [...new Set([...cell.settled, ...answered])];
  await writeKeptDrive(folder, drive, {
    box: known.box,
    cells: { ...known.cells, [vehicle]: { ...cell, changes: [], settled } },
  });
}

type Parts = Parameters<typeof mapKey>[0];

/** What a cell would be made of now. */
function makesOf(of: GridOf, drive: GridDrive, parts: Parts, box: Box): (vehicle: GridVehicle) => MadeOf {
  const shared = {
    map: mapKey(parts, box),
    // by the day it is driven on, as a check takes them
    note: print(notesAbout(of.notes, box, drive.leaveAt ?? of.made)),
    margin: print([of.margins ?? null, of.country ?? null]),
    leave: print(drive.leaveAt ?? null),
    day: print(drive.day ?? null),
    drive: print([drive.gpx, drive.track, PROGRAM]),
  };
  return ({ card }) => ({ ...shared, card: print(card) });
}

function print(value: unknown): string {
  return hashOf(value, sha256Of).slice(0, 32);
}

function tasksOf(of: GridOf, fresh: readonly GridCell[]): DriveTask[] {
  const done = new Set(fresh.map(({ drive, vehicle }) => JSON.stringify([drive, vehicle])));
  const { kept } = of;
  return of.drives.flatMap(({ id, file, track, leaveAt, day }) => {
    const vehicles = of.vehicles
      .filter((vehicle) => !done.has(JSON.stringify([id, vehicle.id])))
      .map((vehicle) => ({
        ...vehicle,
        ...(kept === undefined ? {} : { keptAt: keptAt(kept, id, vehicle.id) }),
      }));
    return vehicles.length === 0 ? [] : [{ drive: id, file, track, vehicles, ...given({ leaveAt, day }) }];
  });
}

/** The acknowledgements that have answered already, of the drives that are judged. */
async function settledOf(
  { kept }: GridOf,
  tasks: readonly DriveTask[],
): Promise<(judged: JudgedCell) => readonly string[]> {
  const known = new Map<string, KeptDrive | undefined>();
  if (kept !== undefined) for (const { drive } of tasks) known.set(drive, await readKeptDrive(kept, drive));
  return ({ drive, vehicle }) => known.get(drive)?.cells[vehicle]?.settled ?? [];
}

/** Gathers a drive's cells, and keeps them when the drive is done. */
function keeper(of: GridOf, parts: Parts, settledOf: (judged: JudgedCell) => readonly string[]) {
  const gathered = new Map<string, JudgedCell[]>();
  return {
    take(judged: JudgedCell): GridCell {
      gathered.set(judged.drive, [...(gathered.get(judged.drive) ?? []), judged]);
      const { drive, vehicle, cell, differences = [] } = judged;
      const { changes } = stillToSee(differences, acknowledgedOf(of, judged), settledOf(judged));
      return { drive, vehicle, cell, stale: [], changes: [...changes] };
    },
    async end(id: string, box: Box): Promise<void> {
      const drive = of.drives.find((each) => each.id === id);
      const cells = gathered.get(id) ?? [];
      gathered.delete(id);
      if (of.kept === undefined || drive === undefined) return;
      const known: KeptDrive | undefined = await readKeptDrive(of.kept, id);
      const makes = makesOf(of, drive, parts, box);
      const fresh = cells.flatMap(({ vehicle, cell, map, differences }) => {
        const found = of.vehicles.find((each) => each.id === vehicle);
        if (found === undefined) return [];
        const pair = { drive: id, vehicle };
        const kept: KeptCell = {
          madeOf: { ...makes(found), map },
          cell,
          changes: [...(differences ?? [])],
          // what was acknowledged before there was a report here is in that report
          settled: known?.cells[vehicle]?.settled ?? acknowledgedOf(of, pair).map((each) => each.id),
        };
        return [[vehicle, kept] as const];
      });
      await writeKeptDrive(of.kept, id, { box, cells: { ...known?.cells, ...Object.fromEntries(fresh) } });
    },
  };
}
