import { circle, type Pair, points, simplify, smooth, sway } from './curve.ts';
import type { Line, LineKind, Tags, Vertex } from './line.ts';
import { item, type Point } from './plane.ts';
import type { Random } from './random.ts';

/** How a line bends between the points it is given. */
export interface Bend {
  /** metres to either side */
  readonly amplitude: number;
  readonly wave: number;
}

type Options = Partial<Pick<Line, 'separate' | 'under' | 'rail' | 'ford' | 'bridge' | 'joins'>>;

/** Points of a drawn line lie within this of the true curve. Metres. */
const DRAWN_M = 0.6;

export function makeLine(
  key: string,
  kind: LineKind,
  pts: readonly Point[],
  tags: Tags,
  options: Options = {},
): Line {
  const vertices: Vertex[] = [...pts];
  return { key, kind, tags, pts: vertices, seg: vertices.slice(1).map(() => ({})), ...options };
}

/** A natural line through points: smoothed, swaying, simplified. Its first and last points stay. */
export function curve(random: Random, through: readonly Point[], bend: Bend): Point[] {
  const drawn = simplify(sway(smooth(through), random, bend.amplitude, bend.wave), DRAWN_M);
  // the very ends are kept as given: they may be vertices shared with another line
  return [item(through, 0), ...drawn.slice(1, -1), item(through, -1)];
}

export function draw(
  random: Random,
  key: string,
  kind: LineKind,
  pairs: readonly Pair[],
  bend: Bend,
  tags: Tags,
  options: Options = {},
): Line {
  return makeLine(key, kind, curve(random, points(pairs), bend), tags, options);
}

/** A roundabout as driven on the left: clockwise. */
export function roundabout(key: string, [x, y]: Pair, radius: number, tags: Tags): Line {
  const ring = circle({ x, y }, radius, Math.max(12, Math.round(radius * 0.8))).reverse();
  const line = makeLine(key, 'road', ring, { ...tags, junction: 'roundabout', oneway: 'yes' });
  line.pts.push(item(line.pts, 0));
  line.seg.push({});
  return line;
}

export const STRAIGHT: Bend = { amplitude: 0, wave: 400 };
export const MAIN: Bend = { amplitude: 18, wave: 1300 };
export const COUNTRY: Bend = { amplitude: 24, wave: 760 };
export const LANE: Bend = { amplitude: 22, wave: 420 };
