import { distanceM } from '../earth/sphere.ts';
import type { ServicePoint } from './point.ts';

/** A point and its outline lie this near each other; those of one name may, a site being large. Metres. */
const NEAR_M = 60;
const NAMED_NEAR_M = 250;

/**
 * Places that are mapped twice, as a point and as an outline, once each: of one kind, near each other, and saying nothing
 * otherwise of themselves. What either says counts.
 */
export function onceEach(points: readonly ServicePoint[]): ServicePoint[] {
  const kept: ServicePoint[] = [];
  for (const point of points) {
    const at = kept.findIndex((other) => isSame(other, point));
    const other = kept[at];
    if (other === undefined) kept.push(point);
    else kept[at] = joined(other, point);
  }
  return kept;
}

function isSame(a: ServicePoint, b: ServicePoint): boolean {
  if (a.kind !== b.kind || a.osm.type === b.osm.type) return false;
  const isNamed = a.name !== undefined && a.name === b.name;
  const awayM = distanceM(a.lat, a.lon, b.lat, b.lon);
  if (awayM > (isNamed ? NAMED_NEAR_M : NEAR_M)) return false;
  return Object.entries(a.tags).every(([key, value]) => (b.tags[key] ?? value) === value);
}

/** The one that says more, with what the other says besides. */
function joined(a: ServicePoint, b: ServicePoint): ServicePoint {
  const more = Object.keys(b.tags).length > Object.keys(a.tags).length ? b : a;
  const name = a.name ?? b.name;
  return { ...more, tags: { ...a.tags, ...b.tags }, ...(name === undefined ? {} : { name }) };
}
