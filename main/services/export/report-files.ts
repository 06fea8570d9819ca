import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import { wayGpx } from '../../../geo/export/way-gpx.ts';
import type { WayRound } from '../../../geo/report/way-round.ts';
import { driveTogether } from '../../../geo/report/ways/ways-by-bar.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { listed } from '../../../geo/units/text.ts';
import { routeWithWays } from '../../../geo/wayround/take-way.ts';
import type { CheckOutcome } from '../check-drive.ts';

/** The files of one checked drive, by name. `text` is the report as a page. */
export function reportFiles(outcome: CheckOutcome, text: string): Result<Record<string, string>> {
  const { report, drive, roads, route } = outcome;
  const gpx = driveGpx(report, route);
  if (!gpx.ok) return gpx;
  const ways: Record<string, string> = {};
  for (const { file, ...taken } of wayFiles(report.waysRound ?? [])) {
    const changed = wayGpx(report, routeWithWays({ route, drive, roads }, taken.ways), taken);
    if (!changed.ok) return changed;
    ways[file] = changed.value;
  }
  return ok({
    'report.json': `${JSON.stringify(report, null, 2)}\n`,
    'report.txt': text,
    'findings.geojson': `${JSON.stringify(findingsGeoJson(report, drive, roads), null, 2)}\n`,
    'drive.gpx': gpx.value,
    ...ways,
  });
}

/** The drive by each way round, and by those that are driven together to pass as much as can be. */
function wayFiles(ways: readonly WayRound[]) {
  const single = ways.map((way, i) => ({
    file: `way-round-${i + 1}.gpx`,
    ways: [way],
    called: `way round ${i + 1}`,
  }));
  const together = driveTogether(ways);
  if (together.length < 2) return single;
  const called = `ways round ${listed(together.map((at) => at + 1))}`;
  return [...single, { file: 'ways-round-together.gpx', ways: together.map((at) => ways[at]!), called }];
}
