import { checkDrive } from '../../../geo/check.ts';
import type { ServicesFound } from '../../../geo/day/service.ts';
import { given } from '../../../geo/given.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { ServiceKind } from '../../../geo/services/kinds.ts';
import { onceEach } from '../../../geo/services/once-each.ts';
import type { ServicePoint } from '../../../geo/services/point.ts';
import { pointsIn } from '../../../geo/services/points-in.ts';
import type { Prefer } from '../../../geo/wayround/price/prices.ts';
import { REACH_M } from '../../../geo/wayround/stop/candidates.ts';
import { servicesNear } from '../../../geo/wayround/stop/services-near.ts';
import { type CheckOnAnyMap, followedOn, type ReadRoads, segmentOf } from './ways-past.ts';

/** What is looked for. */
export interface ServicesWanted {
  readonly wanted: readonly ServiceKind[];
  readonly prefer?: Prefer;
}

/** Roads are read so far beside the drive: a way to a place within reach may swing out beyond it. */
const WIDE_M = 2 * REACH_M;

/** Places to see to the tanks along a drive, where all the roads there are have been read. */
export function servicesOn(
  roads: Roads,
  check: CheckOnAnyMap,
  { wanted, prefer }: ServicesWanted,
  points: readonly ServicePoint[] = pointsIn(roads),
): Result<ServicesFound> {
  const followed = followedOn(roads, check);
  if (!followed.ok) return followed;
  const input = followed.value;
  const looked = { check: input, report: checkDrive(input), points: onceEach(points), wanted };
  return ok(servicesNear({ ...looked, ...given({ prefer }) }));
}

/**
 * The same where roads are read piece by piece: first those far about the drive, to find ways; then all that lies near
 * the ways found, roofs over pumps included, so that each is judged on everything the map has.
 */
export async function servicesRead(
  read: ReadRoads,
  check: CheckOnAnyMap,
  wanted: ServicesWanted,
  points: readonly ServicePoint[],
): Promise<Result<ServicesFound>> {
  const found = servicesOn(await read(check.route, { reachM: WIDE_M }), check, wanted, points);
  if (!found.ok || found.value.services.length === 0) return found;
  const { services, not, leftOut } = found.value;
  const ways = services.flatMap(({ way }) => (way === undefined ? [] : [segmentOf(way.path)]));
  const near = await read({ segments: [...check.route.segments, ...ways] });
  const told = new Set(services.map(({ osm }) => keyOf(osm)));
  const again = servicesOn(
    near,
    check,
    wanted,
    onceEach(points).filter(({ osm }) => told.has(keyOf(osm))),
  );
  if (!again.ok) return again;
  return ok({
    services: again.value.services,
    not: [...again.value.not, ...not],
    leftOut: leftOut + again.value.leftOut,
  });
}

function keyOf({ type, id }: ServicePoint['osm']): string {
  return `${type}${id}`;
}
