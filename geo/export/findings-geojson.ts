import { featureCollection, lineString, point } from '@turf/turf';
import type { Feature, FeatureCollection, Geometry } from 'geojson';
import type { Drive } from '../drive/drive.ts';
import { lineBetween } from '../drive/line-between.ts';
import { given } from '../given.ts';
import { numberedFindings } from '../report/numbered.ts';
import type { DriveReport } from '../report/report.ts';
import type { Roads } from '../roads/roads.ts';

/**
 * The findings as GeoJSON (RFC 7946): a LineString for a finding with a span, a Point for one at a place.
 * Properties carry the finding without its place, and the number under which screens and paper show it.
 */
export function findingsGeoJson(report: DriveReport, drive: Drive, roads: Roads): FeatureCollection {
  const numbers = new Map(numberedFindings(report.findings).map(({ number, finding }) => [finding, number]));
  const features = report.findings.map((finding): Feature<Geometry> => {
    const { at, ...own } = finding;
    const properties = { ...given({ number: numbers.get(finding) }), ...own };
    const id = { id: own.id };
    const spans = properties.toM > properties.fromM;
    const line = spans ? lineBetween(drive, roads, properties.fromM, properties.toM) : [];
    return line.length > 1
      ? lineString(line.map(rounded), properties, id)
      : point(rounded([at.lon, at.lat]), properties, id);
  });
  return featureCollection(features);
}

/** Seven decimals, about a centimetre: RFC 7946 asks for no more than is meant. */
function rounded([lon, lat]: readonly [number, number]): [number, number] {
  return [Math.round(lon * 1e7) / 1e7, Math.round(lat * 1e7) / 1e7];
}
