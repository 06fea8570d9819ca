import { join } from 'node:path';
import { setImmediate as others } from 'node:timers/promises';
import type { Place } from '../../../geo/earth/sphere.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { comesWithin, mayComeWithin } from '../../../geo/yard/near-line.ts';
import type { Library } from '../library/library.ts';
import type { GridDrive } from './grid/grid.ts';
import { lineOfDrive } from './kept-line.ts';

/** Drives of a library, and where this computer keeps what it works out of them. */
interface Drives {
  readonly library: Library;
  readonly drives: readonly GridDrive[];
  readonly kept: string;
}

/** Where is asked about: so many metres about a place. */
export interface About extends Place {
  readonly radiusM: number;
}

/** The drives that come near a place. */
interface Near {
  /** their ids */
  readonly drives: readonly string[];
  /** a sentence for each that nobody can tell it of */
  readonly unread: readonly string[];
}

/** The drives that come within so many metres of a place. What cannot reach it by its length is not looked at. */
export async function drivesNear(
  { library, drives, kept }: Drives,
  about: About,
  { signal, onProgress }: { readonly signal: AbortSignal; onProgress(share: number): void },
): Promise<Result<Near>> {
  const near: string[] = [];
  const unread: string[] = [];
  for (const [i, drive] of drives.entries()) {
    if (signal.aborted) return fail('cancelled', 'Cancelled.');
    const body = library.find('drive', drive.id)?.versions[0]?.body;
    if (body === undefined || !mayComeWithin(body, about, about.radiusM)) continue;
    const line = await lineOfDrive(join(kept, 'lines'), drive);
    if (!line.ok) unread.push(`${drive.name}: ${line.error.message}`);
    else if (comesWithin(line.value, about, about.radiusM)) near.push(drive.id);
    onProgress(i / drives.length);
    // the first time their files are read: what else the window asks is answered between them
    await others();
  }
  return ok({ drives: near, unread });
}
