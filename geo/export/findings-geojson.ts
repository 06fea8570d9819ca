import { featureCollection, lineString, point } from '@turf/turf';
import type { Feature, FeatureCollection, Geometry } from 'geojson';
import type { Drive } from '../drive/drive.ts';
import { lineBetween } from '../drive/line-between.ts';
import type { DriveReport } from '../report/report.ts';
import type { Roads } from '../roads/roads.ts';

/**
 * The findings as GeoJSON (RFC 7946): a LineString for a finding with a span, a Point for one at a place.
 * Properties carry the finding without its place.
 */
export function findingsGeoJson(report: DriveReport, drive: Drive, roads: Roads): FeatureCollection {
  const features = report.findings.map(({ at, ...properties }): Feature<Geometry> => {
    const id = { id: properties.id };
    const spans = properties.toM > properties.fromM;
    const line = spans ? lineBetween(drive, roads, properties.fromM, properties.toM) : [];
    return line.length > 1 ? lineString(line, properties, id) : point([at.lon, at.lat], properties, id);
  });
  return featureCollection(features);
}
