import { statfs } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Stopped } from './stopped.ts';

/** What an import needs of the disk, in times of its source: files on the way and the part itself. Measured. */
const TIMES_SORTED = 7;
/** Of gzipped text and other formats, which hold the same in more or fewer bytes. */
const TIMES_GENERAL = 10;
const LEAST_BYTES = 20e6;

/** Refuses an import for which the disk has no room. */
export async function checkRoom(
  outFile: string,
  sourceBytes: number,
  format: 'sorted' | 'general',
): Promise<void> {
  const needed = LEAST_BYTES + sourceBytes * (format === 'sorted' ? TIMES_SORTED : TIMES_GENERAL);
  const folder = dirname(outFile);
  const { bavail, bsize } = await statfs(folder);
  const free = bavail * bsize;
  if (free >= needed) return;
  throw new Stopped({
    code: 'shelf.full',
    message: `There is no room for the map on the shelf (${folder}): about ${megabytes(needed)} are needed while it is read, and ${megabytes(free)} are free. Make room there, or import a smaller extract.`,
  });
}

function megabytes(bytes: number): string {
  return bytes < 1e9 ? `${Math.ceil(bytes / 1e6)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
}
