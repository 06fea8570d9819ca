import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { DIFFERENCE_KINDS } from '../../../../geo/library/differences/difference.ts';
import { findingSchema } from '../../../../geo/report/finding.ts';
import { cellSchema } from '../../../../geo/yard/cell.ts';
import { madeOfSchema } from '../../../../geo/yard/made-of.ts';
import { replaceFile } from '../../files/replace-file.ts';
import type { KeptAt } from './messages.ts';

const boxSchema = z.strictObject({
  south: z.number(),
  west: z.number(),
  north: z.number(),
  east: z.number(),
});

/** Something that is otherwise than a person has seen it. */
const changeSchema = z.strictObject({
  kind: z.enum(DIFFERENCE_KINDS),
  finding: z.string(),
  was: findingSchema.optional(),
  now: findingSchema.optional(),
  /** metres along the drive */
  fromM: z.number(),
  toM: z.number(),
  say: z.string(),
});

const keptCellSchema = z.strictObject({
  madeOf: madeOfSchema,
  cell: cellSchema,
  /** what is otherwise than a person has seen it */
  changes: z.array(changeSchema),
  /** acknowledgements that have answered, or are older than what is compared with */
  settled: z.array(z.string()),
});
export type KeptCell = z.infer<typeof keptCellSchema>;

/** What is kept of one drive's cells, format `lanegauge.cells` version 1. It can be made anew at any time. */
const keptDriveSchema = z.strictObject({
  format: z.literal('lanegauge.cells'),
  version: z.literal(1),
  /** where the drive lies, with what is read about it */
  box: boxSchema,
  /** by vehicle */
  cells: z.record(z.string(), keptCellSchema),
});
export type KeptDrive = z.infer<typeof keptDriveSchema>;

/** Reads what is kept of a drive's cells; undefined where nothing is, or nothing that can be read. */
export async function readKeptDrive(folder: string, drive: string): Promise<KeptDrive | undefined> {
  try {
    const read = keptDriveSchema.safeParse(JSON.parse(await readFile(fileOf(folder, drive), 'utf8')));
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a drive's cells. @throws what the system says */
export async function writeKeptDrive(
  folder: string,
  drive: string,
  kept: Pick<KeptDrive, 'box' | 'cells'>,
): Promise<void> {
  await mkdir(folder, { recursive: true });
  await replaceFile(
    fileOf(folder, drive),
    JSON.stringify({ format: 'lanegauge.cells', version: 1, ...kept } satisfies KeptDrive),
  );
}

/** Where the reports of one drive with one vehicle are kept. */
export function keptAt(folder: string, drive: string, vehicle: string): KeptAt {
  const base = join(reportsOf(folder, drive), safe(vehicle));
  return { seen: `${base}.seen.gz`, newest: `${base}.newest.gz` };
}

/** Where the reports of one drive are kept. */
export function reportsOf(folder: string, drive: string): string {
  return join(folder, 'reports', safe(drive));
}

function fileOf(folder: string, drive: string): string {
  return join(folder, `${safe(drive)}.json`);
}

/** Ids are ours, and plain; whatever else comes must not lead out of the folder. */
function safe(id: string): string {
  return id.replace(/[^A-Za-z0-9_-]/g, (letter) => `.${letter.codePointAt(0)?.toString(16)}`);
}
