import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { CheckOutcome } from '../check-drive.ts';

/** The files of one checked drive, by name. `text` is the report as a page. */
export function reportFiles(outcome: CheckOutcome, text: string): Result<Record<string, string>> {
  const { report, drive, roads, route } = outcome;
  const gpx = driveGpx(report, route);
  if (!gpx.ok) return gpx;
  return ok({
    'report.json': `${JSON.stringify(report, null, 2)}\n`,
    'report.txt': text,
    'findings.geojson': `${JSON.stringify(findingsGeoJson(report, drive, roads), null, 2)}\n`,
    'drive.gpx': gpx.value,
  });
}
