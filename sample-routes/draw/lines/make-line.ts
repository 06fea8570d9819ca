import type { Point } from '../../../geo/earth/point.ts';
import { given } from '../../../geo/given.ts';
import type { Bend, Meeting, RoadPlan, Tags } from '../../plan/words.ts';
import { circle, points, simplify, smooth, sway } from './curve.ts';
import type { Line, LineKind, Vertex } from './line.ts';
import { item } from './plane.ts';
import type { Random } from './random.ts';

/** Points of a drawn line lie within this of the true curve. Metres. */
const DRAWN_M = 0.6;

export function makeLine(
  key: string,
  kind: LineKind,
  pts: readonly Point[],
  tags: Tags,
  meeting: Meeting = {},
): Line {
  const vertices: Vertex[] = [...pts];
  return { key, kind, tags: { ...tags }, pts: vertices, seg: vertices.slice(1).map(() => ({})), ...meeting };
}

/** A natural line through points: smoothed, swaying, simplified. Its first and last points stay. */
export function curve(random: Random, through: readonly Point[], bend: Bend): Point[] {
  const drawn = simplify(sway(smooth(through), random, bend.amplitude, bend.wave), DRAWN_M);
  // the very ends are kept as given: they may be vertices shared with another line
  return [item(through, 0), ...drawn.slice(1, -1), item(through, -1)];
}

/** A line as planned. */
export function drawLine(random: Random, kind: LineKind, plan: RoadPlan): Line {
  const { key, bend, tags, through, separate, under, rail, ford, bridge, joins } = plan;
  const meeting = given({ separate, under, rail, ford, bridge, joins });
  return makeLine(key, kind, curve(random, points(through), bend), tags, meeting);
}

/** A roundabout as driven on the left: clockwise. */
export function roundabout(key: string, middle: Point, radius: number, tags: Tags): Line {
  const ring = circle(middle, radius, Math.max(12, Math.round(radius * 0.8))).reverse();
  const line = makeLine(key, 'road', ring, { ...tags, junction: 'roundabout', oneway: 'yes' });
  line.pts.push(item(line.pts, 0));
  line.seg.push({});
  return line;
}
