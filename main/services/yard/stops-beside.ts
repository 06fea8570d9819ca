import { join } from 'node:path';
import { STOP_BESIDE_M } from '../../../geo/day/meet-stops.ts';
import type { DayStop } from '../../../geo/day/plan.ts';
import { nearestM } from '../../../geo/yard/near-line.ts';
import type { Library } from '../library/library.ts';
import { askedBy } from './asked-by.ts';
import { lineOfDrive } from './kept-line.ts';
import { gridOfLibrary, type YardAsked } from './yard-of.ts';

/** A stop that does not lie on its drive as that is drawn. */
export interface StopBeside {
  readonly name: string;
  /** metres, at least */
  readonly awayM: number;
  /** it lies on the drive with latitude and longitude swapped */
  readonly swapped?: true;
}

/** The stops that lie farther from the drive as drawn than a stop that is counted may; none where nobody can tell. */
export async function stopsBeside(
  {
    library,
    drive,
    stops,
  }: { readonly library: Library; readonly drive: string; readonly stops: readonly DayStop[] },
  here: Pick<YardAsked, 'dataFolder' | 'now'>,
): Promise<StopBeside[]> {
  if (stops.length === 0) return [];
  const { drives, kept } = gridOfLibrary(await askedBy(library, here));
  const of = drives.find(({ id }) => id === drive);
  const line = of && (await lineOfDrive(join(kept, 'lines'), of));
  // a file that cannot be read is told by the check
  if (!line?.ok) return [];
  return stops.flatMap((stop) => {
    const awayM = nearestM(line.value, stop, STOP_BESIDE_M);
    if (awayM <= STOP_BESIDE_M) return [];
    const other = { lat: stop.lon, lon: stop.lat };
    const isSwapped =
      Math.abs(other.lat) <= 90 && nearestM(line.value, other, STOP_BESIDE_M) <= STOP_BESIDE_M;
    return [{ name: stop.name, awayM, ...(isSwapped && { swapped: true as const }) }];
  });
}
