import type { Waypoint } from '../drive/gpx/gpx-text.ts';
import type { Route } from '../drive/gpx/route.ts';
import { writeGpx } from '../drive/gpx/write-gpx.ts';
import type { DriveReport, Finding } from '../report/report.ts';
import type { Result } from '../result.ts';

const NAME_LONGEST = 60;

/**
 * The planned drive as GPX 1.1 with a waypoint for every finding that screens show, numbered in driving order:
 * `02 BARRED height 2.9 m`, what to do in its description.
 */
export function driveGpx(report: DriveReport, route: Route): Result<string> {
  const shown = report.findings.filter((finding) => !finding.folded);
  return writeGpx(
    { name: route.name || report.route.file, segments: route.segments },
    shown.map((finding, index) => waypointOf(finding, index + 1)),
    report.program,
  );
}

function waypointOf(finding: Finding, number: number): Waypoint {
  const limit = finding.limit === undefined ? '' : ` ${finding.limit.value} ${finding.limit.unit}`;
  const name = `${String(number).padStart(2, '0')} ${finding.level.toUpperCase()} ${finding.subject}${limit}`;
  return {
    lat: finding.at.lat,
    lon: finding.at.lon,
    name: name.slice(0, NAME_LONGEST),
    description: `${finding.say} ${finding.advice}`.trim(),
    symbol: 'Flag',
  };
}
