import type { Drive } from '../drive/drive.ts';
import type { Route, RouteSegment } from '../drive/gpx/route.ts';
import { lineBetween } from '../drive/line-between.ts';
import type { Roads } from '../roads/roads.ts';

/** A way in place of a stretch of a drive. */
export interface WayTaken {
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
  /** latitude and longitude of every place passed */
  readonly path: readonly (readonly [lat: number, lon: number])[];
}

/** A drive on its roads. */
interface OnRoads {
  readonly route: Route;
  readonly drive: Drive;
  readonly roads: Roads;
}

type Line = readonly (readonly [lon: number, lat: number])[];

/**
 * The route of the drive with the way in place of its stretch: as dense as the roads are drawn, so that whoever follows
 * it comes to these roads and no other. Where the file's segments did not meet, these do not.
 */
export function routeWithWay({ route, drive, roads }: OnRoads, { fromM, toM, path }: WayTaken): Route {
  const before = piecesOf(drive, roads, 0, fromM);
  const after = piecesOf(drive, roads, toM, drive.lengthM);
  const way: Line = path.map(([lat, lon]) => [lon, lat]);
  const joined = [...(before.at(-1) ?? []), ...way, ...(after[0] ?? [])];
  const lines = [...before.slice(0, -1), joined, ...after.slice(1)];
  return { ...route, segments: lines.filter((line) => line.length > 1).map(segmentOf) };
}

/** The line between two places of the drive, cut where it has gaps. */
function piecesOf(drive: Drive, roads: Roads, fromM: number, toM: number): Line[] {
  if (toM <= fromM) return [];
  const gaps = drive.legs.flatMap((leg) =>
    leg.kind === 'gap' && leg.atM > fromM && leg.atM < toM ? [leg.atM] : [],
  );
  const cuts = [fromM, ...gaps, toM];
  return cuts.slice(1).map((endM, i) => lineBetween(drive, roads, cuts[i]!, endM));
}

function segmentOf(line: Line): RouteSegment {
  const places = line.filter(
    ([lon, lat], i) => i === 0 || lon !== line[i - 1]![0] || lat !== line[i - 1]![1],
  );
  return {
    lat: Float64Array.from(places, ([, lat]) => lat),
    lon: Float64Array.from(places, ([lon]) => lon),
    timeMs: new Float64Array(places.length).fill(Number.NaN),
  };
}
