import { mkdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { type DriveReport, driveReportSchema } from '../../../../geo/report/report.ts';
import { replaceFile } from '../../files/replace-file.ts';

const pack = promisify(gzip);
const unpack = promisify(gunzip);
/** No report is longer: what unpacks to more is none of ours. */
const MOST_BYTES = 100_000_000;

/** The report that a cell was told from; undefined where none is kept, or none that can be read. */
export async function keptReport(path: string): Promise<DriveReport | undefined> {
  try {
    const text = await unpack(await readFile(path), { maxOutputLength: MOST_BYTES });
    const read = driveReportSchema.safeParse(JSON.parse(text.toString('utf8')));
    return read.success ? read.data : undefined;
  } catch {
    // it can be made anew at any time
    return undefined;
  }
}

/** Keeps it for the next comparison. @throws what the system says */
export async function keepReport(path: string, report: DriveReport): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await replaceFile(path, await pack(JSON.stringify(report), { level: 1 }));
}
