import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { ok, type Result } from '../../../geo/result.ts';
import { type RoughLine, roughLine } from '../../../geo/yard/near-line.ts';
import { readDriveFile } from '../engine/read-drive-file.ts';
import { chooseTrack } from '../route/choose-track.ts';
import type { GridDrive } from './grid/grid.ts';

const lineSchema = z.array(z.array(z.number()));

/**
 * Where a drive runs, as kept on this computer since it was first asked; its file never changes, and so the line does
 * not either.
 * @param folder where lines are kept
 */
export async function lineOfDrive(
  folder: string,
  { file, gpx, track }: Pick<GridDrive, 'file' | 'gpx' | 'track'>,
): Promise<Result<RoughLine>> {
  const path = join(folder, `${gpx.slice(0, 32)}-${track}.json`);
  const kept = await readLine(path);
  if (kept !== undefined) return ok(kept);
  const read = await readDriveFile(file);
  if (!read.ok) return read;
  const chosen = chooseTrack(read.value, track);
  if (!chosen.ok) return chosen;
  const line = roughLine(chosen.value.route.segments);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(path, JSON.stringify(line));
  } catch {
    // it is only read again the next time
  }
  return ok(line);
}

async function readLine(path: string): Promise<RoughLine | undefined> {
  try {
    return lineSchema.parse(JSON.parse(await readFile(path, 'utf8')));
  } catch {
    // none is kept, or half of one
    return undefined;
  }
}
