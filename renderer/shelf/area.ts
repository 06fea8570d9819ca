import { acrossM, fromMercator } from '../../geo/earth/mercator.ts';
import { METRES_PER_MILE } from '../../geo/units/exact.ts';
import { inUnits, type Units } from '../../geo/units/in-units.ts';
import type { ShelfMap } from '../../main/contract/shelf.ts';

type Area = ShelfMap['area'];

/** The squares' own box, in columns and rows of their zoom; undefined for a map without a road. */
export function boxOf({ tiles }: Area) {
  if (tiles.length === 0) return undefined;
  let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of tiles) {
    west = Math.min(west, x);
    east = Math.max(east, x + 1);
    north = Math.min(north, y);
    south = Math.max(south, y + 1);
  }
  return { west, north, columns: east - west, rows: south - north };
}

/** Where a map lies and how far it reaches, for whom the drawing says nothing: `About 40 km by 30 km round 52.6° N 0.7° W.` */
export function sayArea(area: Area, units: Units): string {
  const box = boxOf(area);
  if (!box) return '';
  const across = 2 ** area.zoom;
  const { lat, lon } = fromMercator(
    (box.west + box.columns / 2) / across,
    (box.north + box.rows / 2) / across,
  );
  const squareM = acrossM(lat) / across;
  const wide = sayReach(box.columns * squareM, units);
  const high = sayReach(box.rows * squareM, units);
  return `About ${wide} by ${high} round ${degrees(lat, 'N', 'S')} ${degrees(lon, 'E', 'W')}.`;
}

function sayReach(m: number, units: Units): string {
  return inUnits(units, `${Math.ceil(m / 1000)} km`, `${Math.ceil(m / METRES_PER_MILE)} mi`);
}

function degrees(value: number, above: string, below: string): string {
  return `${Math.abs(value).toFixed(1)}° ${value < 0 ? below : above}`;
}
