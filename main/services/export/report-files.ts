import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import { wayGpx } from '../../../geo/export/way-gpx.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { routeWithWay } from '../../../geo/wayround/take-way.ts';
import type { CheckOutcome } from '../check-drive.ts';

/** The files of one checked drive, by name. `text` is the report as a page. */
export function reportFiles(outcome: CheckOutcome, text: string): Result<Record<string, string>> {
  const { report, drive, roads, route } = outcome;
  const gpx = driveGpx(report, route);
  if (!gpx.ok) return gpx;
  const ways: Record<string, string> = {};
  for (const [i, way] of (report.waysRound ?? []).entries()) {
    const changed = wayGpx(report, routeWithWay({ route, drive, roads }, way), way, i + 1);
    if (!changed.ok) return changed;
    ways[`way-round-${i + 1}.gpx`] = changed.value;
  }
  return ok({
    'report.json': `${JSON.stringify(report, null, 2)}\n`,
    'report.txt': text,
    'findings.geojson': `${JSON.stringify(findingsGeoJson(report, drive, roads), null, 2)}\n`,
    'drive.gpx': gpx.value,
    ...ways,
  });
}
