import { distanceM } from '../../earth/sphere.ts';
import { itemAt } from '../../lists.ts';
import { printApart, printRun } from '../../units/print.ts';
import { counted } from '../../units/text.ts';
import type { Route } from './route.ts';

/** Nobody drives this far between two positions: a logger without a fix, or two drives in one. */
const JUMP_M = 500_000;

/**
 * What the user should know about one route before it is driven: gaps that are not driven, jumps no road makes,
 * positions at 0/0, segments of one position.
 *
 * @returns sentences, none when there is nothing to say
 */
export function noteRoute(route: Route): string[] {
  return [...noteGaps(route), ...noteLonePositions(route), ...noteJumps(route), ...noteNullIsland(route)];
}

function noteGaps({ segments }: Route): string[] {
  let straightM = 0;
  for (let i = 1; i < segments.length; i++) {
    const [before, after] = [itemAt(segments, i - 1), itemAt(segments, i)];
    const last = before.lat.length - 1;
    straightM += distanceM(before.lat[last]!, before.lon[last]!, after.lat[0]!, after.lon[0]!);
  }
  if (segments.length < 2) return [];
  const gaps = counted(segments.length - 1, 'gap');
  return [
    `The file leaves ${gaps} in the drive (${printRun(straightM)} straight); a gap is not driven or checked.`,
  ];
}

function noteLonePositions({ segments }: Route): string[] {
  const lone = segments.filter((segment) => segment.lat.length === 1).length;
  return lone === 0 ? [] : [`${counted(lone, 'segment')} of a single position: nothing to drive there.`];
}

function noteJumps({ segments }: Route): string[] {
  let jumps = 0;
  let first = '';
  segments.forEach(({ lat, lon }, s) => {
    for (let i = 1; i < lat.length; i++) {
      const stepM = distanceM(lat[i - 1]!, lon[i - 1]!, lat[i]!, lon[i]!);
      if (stepM > JUMP_M && jumps++ === 0)
        first = `${printApart(stepM)} before position ${i + 1} of segment ${s + 1}`;
    }
  });
  return jumps === 0
    ? []
    : [`${counted(jumps, 'jump')} of over 500 km, first ${first}: the file may be faulty.`];
}

function noteNullIsland({ segments }: Route): string[] {
  let count = 0;
  for (const { lat, lon } of segments)
    for (let i = 0; i < lat.length; i++) if (lat[i] === 0 && lon[i] === 0) count++;
  return count === 0 ? [] : [`${counted(count, 'position')} at 0/0, where a logger without a fix puts them.`];
}
