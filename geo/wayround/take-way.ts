import type { Drive } from '../drive/drive.ts';
import type { Route, RouteSegment } from '../drive/gpx/route.ts';
import { lineBetween } from '../drive/line-between.ts';
import { append } from '../lists.ts';
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

/** What a drive is called that was changed: `To the coast, changed`, however often. */
export function changedName(name: string): string {
  return name.endsWith(CHANGED) ? name : `${name}${CHANGED}`;
}

const CHANGED = ', changed';

/** The route of the drive with one way in place of its stretch, see `routeWithWays`. */
export function routeWithWay(drive: OnRoads, way: WayTaken): Route {
  return routeWithWays(drive, [way]);
}

/**
 * The route of the drive with ways in place of its stretches, none of which needs another's: as dense as the roads are
 * drawn, so that whoever follows it comes to these roads and no other. Where the file's segments did not meet, these do
 * not.
 */
export function routeWithWays({ route, drive, roads }: OnRoads, ways: readonly WayTaken[]): Route {
  const inOrder = [...ways].sort((a, b) => a.fromM - b.fromM);
  const lines: Line[] = [];
  let atM = 0;
  for (const { fromM, toM, path } of inOrder) {
    appendTo(lines, piecesOf(drive, roads, atM, fromM));
    appendTo(lines, [path.map(([lat, lon]) => [lon, lat])]);
    atM = toM;
  }
  appendTo(lines, piecesOf(drive, roads, atM, drive.lengthM));
  return { ...route, segments: lines.filter((line) => line.length > 1).map(segmentOf) };
}

/** The first of the new lines goes on where the last one ended. */
function appendTo(lines: Line[], [first, ...others]: readonly Line[]): void {
  if (first === undefined) return;
  const joined = [...(lines.pop() ?? []), ...first];
  append(lines, [joined, ...others]);
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
