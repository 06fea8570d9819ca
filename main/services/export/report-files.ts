import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import type { CheckOutcome } from '../check-drive.ts';

/** The files of one checked drive, by name. */
export function reportFiles(outcome: CheckOutcome, text: string): Record<string, string> {
  const { report, drive, roads } = outcome;
  return {
    'report.json': `${JSON.stringify(report, null, 2)}\n`,
    'report.txt': text,
    'findings.geojson': `${JSON.stringify(findingsGeoJson(report, drive, roads), null, 2)}\n`,
    'drive.gpx': driveGpx(report, outcome.route),
  };
}
