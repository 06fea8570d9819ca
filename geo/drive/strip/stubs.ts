import { clockwiseDeg, turnDeg } from '../../earth/angles.ts';
import { bearingDeg } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import type { nodesOnDrive } from '../drive-place.ts';
import type { DriveTrace } from '../times/trace.ts';
import type { Strip } from './strip.ts';

const NOT_DRAWN = new Set(['footway', 'cycleway', 'path', 'steps', 'bridleway', 'corridor', 'platform']);
const SAME_PLACE_M = 1;
const MAIN = /^(motorway|trunk|primary|secondary)/;
/** A road that leaves within this angle of the driven one, ahead or behind, is taken for that road. Degrees. */
const SAME_WAY_DEG = 15;

/** Side roads that join at nodes passed: on which side they leave. */
export function stubsOf(
  passed: ReturnType<typeof nodesOnDrive>,
  { node: nodeAt, atM }: DriveTrace,
  roads: Roads,
): Strip['stubs'][number][] {
  const { nodes, ways, index } = roads;
  const lat = (node: number) => nodes.lat[node]!;
  const lon = (node: number) => nodes.lon[node]!;
  const bearing = (a: number, b: number) => bearingDeg(lat(a), lon(a), lat(b), lon(b));
  const stubs: Strip['stubs'][number][] = [];
  let at = 0;
  for (const here of passed) {
    while (at < nodeAt.length - 1 && atM[at]! < here.atM - SAME_PLACE_M) at++;
    // the two lists say the same drive; a node that only one of them has must not hide those after it
    for (let i = at; i < nodeAt.length && atM[i]! <= here.atM + SAME_PLACE_M; i++)
      if (nodeAt[i] === here.node) {
        at = i;
        break;
      }
    const before = nodeAt[at - 1] ?? -1;
    const after = nodeAt[at + 1] ?? -1;
    if (nodeAt[at] !== here.node || before < 0 || after < 0 || before === after) continue;
    const ahead = bearing(here.node, after);
    const behind = bearing(here.node, before);
    const seen = new Set<number>();
    for (const { way, seg } of index.inBox(
      lat(here.node),
      lon(here.node),
      lat(here.node),
      lon(here.node),
      'driven',
    )) {
      const highway = ways.tags[way]?.['highway'];
      const ref = ways.start[way]! + seg;
      const [a, b] = [ways.refs[ref]!, ways.refs[ref + 1]!];
      const other = a === here.node ? b : b === here.node ? a : undefined;
      if (highway === undefined || NOT_DRAWN.has(highway) || other === undefined || seen.has(other)) continue;
      seen.add(other);
      if (other === before || other === after) continue;
      const out = bearing(here.node, other);
      if (turnDeg(out, ahead) < SAME_WAY_DEG || turnDeg(out, behind) < SAME_WAY_DEG) continue;
      const clockwiseFromAhead = clockwiseDeg(ahead, out);
      const side = clockwiseFromAhead < clockwiseDeg(ahead, behind) ? 'right' : 'left';
      stubs.push({ atM: here.atM, side, main: MAIN.test(highway) });
    }
  }
  return stubs;
}
