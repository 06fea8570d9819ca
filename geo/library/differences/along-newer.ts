import { mix, shareOf } from '../../earth/between.ts';
import { spanHolding } from '../../earth/bisect.ts';
import type { DriveReport } from '../../report/report.ts';

type Road = DriveReport['roads'][number];

/** A way that two maps draw equally long is the same piece of road: metres, and a share of its length. */
const SAME_LENGTH_M = 5;
const SAME_LENGTH_SHARE = 0.01;

/**
 * From metres along the older report's drive to metres along the newer one's. A road that was redrawn makes the drive
 * longer or shorter from there on; ways that both drives pass once, at the same length, tell by how much.
 */
export function alongNewer(was: DriveReport, now: DriveReport): (m: number) => number {
  const from = [0];
  const to = [0];
  const nowRoads = passedOnce(now.roads);
  for (const [way, road] of passedOnce(was.roads)) {
    const other = nowRoads.get(way);
    if (other === undefined || !isSameLength(road, other)) continue;
    for (const end of ['fromM', 'toM'] as const)
      if (road[end] > from.at(-1)! && other[end] > to.at(-1)!) {
        from.push(road[end]);
        to.push(other[end]);
      }
  }
  if (was.route.lengthM > from.at(-1)! && now.route.lengthM > to.at(-1)!) {
    from.push(was.route.lengthM);
    to.push(now.route.lengthM);
  }
  const known = Float64Array.from(from);
  return (m) => {
    if (known.length < 2) return m;
    const at = spanHolding(known, m);
    return mix(to[at]!, to[at + 1]!, shareOf(m, known[at]!, known[at + 1]!));
  };
}

/** Ways that a drive uses one single time, in driving order. */
function passedOnce(roads: readonly Road[]): ReadonlyMap<number, Road> {
  const once = new Map<number, Road>();
  const met = new Set<number>();
  for (const road of roads) {
    if (met.has(road.way)) once.delete(road.way);
    else once.set(road.way, road);
    met.add(road.way);
  }
  return once;
}

function isSameLength(a: Road, b: Road): boolean {
  const length = a.toM - a.fromM;
  return Math.abs(b.toM - b.fromM - length) <= SAME_LENGTH_M + SAME_LENGTH_SHARE * length;
}
