import type { FeatureCollection, Position } from 'geojson';
import type { Drive } from '../match/drive.ts';
import { lineBetween } from '../match/drive-line.ts';
import type { DriveReport } from '../report.ts';
import type { Roads } from '../roads/roads.ts';

/**
 * The findings as GeoJSON (RFC 7946): a LineString for a finding with a span, a Point for one at a place.
 * Properties carry the finding without its place.
 */
export function findingsGeoJson(report: DriveReport, drive: Drive, roads: Roads): FeatureCollection {
  return {
    type: 'FeatureCollection',
    features: report.findings.map(({ at, ...properties }) => {
      const line: Position[] =
        properties.toM > properties.fromM ? lineBetween(drive, roads, properties.fromM, properties.toM) : [];
      return {
        type: 'Feature',
        id: properties.id,
        geometry:
          line.length > 1
            ? { type: 'LineString', coordinates: line }
            : { type: 'Point', coordinates: [at.lon, at.lat] },
        properties,
      };
    }),
  };
}
