import type { Route } from '../../drive/gpx/route.ts';
import type { DriveReport } from '../../report/report.ts';
import { clip } from '../../units/text.ts';

/** A road that starts later, or ends earlier, is not the one the drive starts or ends on. Metres. */
const AT_END_M = 50;

/**
 * Where the drive starts and ends, so that a sheet cannot be taken for that of another drive:
 * `From Quay Street (54.10000, 9.20000) to Mill Lane (54.20000, 9.30000)`.
 */
export function sayEnds({ roads, route: { lengthM } }: DriveReport, { segments }: Route): string {
  const [first, last] = [segments[0], segments.at(-1)];
  const at = (segment: typeof first, i: number) => {
    const [lat, lon] = [segment?.lat.at(i), segment?.lon.at(i)];
    return lat === undefined || lon === undefined ? '' : ` (${lat.toFixed(5)}, ${lon.toFixed(5)})`;
  };
  const start = roads.find(({ fromM }) => fromM <= AT_END_M);
  const end = roads.findLast(({ toM }) => toM >= lengthM - AT_END_M);
  return `From ${nameOf(start)}${at(first, 0)} to ${nameOf(end)}${at(last, -1)}`;
}

function nameOf(road: DriveReport['roads'][number] | undefined): string {
  if (road === undefined) return 'a place off the mapped roads';
  return clip(road.name ?? road.ref ?? '', 60) || 'a road without a name';
}
