import { apartM, headingRad, type Point } from '../../../geo/earth/point.ts';
import { lengthOf, pointAt } from '../lines/curve.ts';
import { item, step } from '../lines/plane.ts';
import { between, normal, type Random } from '../lines/random.ts';
import type { Driven } from './plan-drive.ts';

/** A position of a drive; `timeS` counts from the start. */
export interface Position extends Point {
  readonly timeS?: number;
}

function lineOf(driven: readonly Driven[]): Point[] {
  return [item(driven, 0).from, ...driven.map((piece) => piece.to)];
}

/** As a planner exports it: every bend and a point at least every 30 m, drawn on a slightly different map. */
export function dense(driven: readonly Driven[], random: Random): Position[] {
  const line = lineOf(driven);
  const field = smoothField(random, 1.8, 2600);
  const out: Position[] = [];
  for (const [i, p] of line.entries()) {
    const before = line[i - 1];
    if (before !== undefined) {
      const count = Math.floor(apartM(before, p) / 30);
      const heading = headingRad(before, p);
      for (let k = 1; k <= count; k++) out.push(step(before, heading, (apartM(before, p) * k) / (count + 1)));
    }
    out.push(p);
  }
  return out.map((p) => ({ x: p.x + field(p, 0), y: p.y + field(p, 1) }));
}

/** Few points, as a route keeps them: the ends, and one about every so many metres. */
export function sparse(driven: readonly Driven[], everyM: number): Position[] {
  const line = lineOf(driven);
  const total = lengthOf(line);
  const count = Math.round(total / everyM);
  return Array.from({ length: count + 1 }, (_, i) =>
    nearestVertex(line, pointAt(line, (total * i) / count).at),
  );
}

function nearestVertex(line: readonly Point[], p: Point): Point {
  return line.reduce((best, q) => (apartM(p, q) < apartM(p, best) ? q : best));
}

/** Metres per second on a road of this class, as a laden motorhome goes. */
const PACE: Readonly<Record<string, number>> = {
  trunk: 25,
  primary: 18,
  secondary: 16,
  tertiary: 14,
  trunk_link: 16,
  service: 4,
  residential: 8,
};

/** As a receiver records it: a fix every few seconds, wandering by about `sigmaM`, slower in bends. */
export function recorded(driven: readonly Driven[], random: Random, sigmaM: number): Position[] {
  const out: Position[] = [];
  let error = { x: 0, y: 0 };
  let timeS = 0;
  let nextS = 0;
  let speed = 3;
  for (const [i, piece] of driven.entries()) {
    const run = apartM(piece.from, piece.to);
    const next = driven[i + 1];
    const turn =
      next === undefined
        ? 0
        : Math.abs(wrap(headingRad(next.from, next.to) - headingRad(piece.from, piece.to)));
    const wanted = (PACE[piece.way.tags['highway'] ?? ''] ?? 10) / (1 + 3 * turn);
    speed += Math.max(-4, Math.min(2, wanted - speed));
    const heading = headingRad(piece.from, piece.to);
    const endS = timeS + run / speed;
    for (; nextS <= endS; nextS += 1 + Math.floor(random() * random() * 5)) {
      // errors of a receiver last: each is mostly the one before
      error = { x: wander(error.x), y: wander(error.y) };
      const at = step(piece.from, heading, (nextS - timeS) * speed);
      out.push({ x: at.x + error.x, y: at.y + error.y, timeS: nextS });
    }
    timeS = endS;
  }
  return out;

  function wander(before: number): number {
    const keep = 0.85;
    const now = keep * before + Math.sqrt(1 - keep * keep) * sigmaM * normal(random);
    return Math.max(-2.2 * sigmaM, Math.min(2.2 * sigmaM, now));
  }
}

function wrap(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}

/** A displacement that changes slowly over the plane. */
function smoothField(random: Random, size: number, wave: number): (p: Point, axis: 0 | 1) => number {
  const phases = Array.from({ length: 4 }, () => between(random, 0, 2 * Math.PI));
  return (p, axis) =>
    (size / 2) *
    (Math.sin((2 * Math.PI * p.x) / wave + (phases[axis] ?? 0)) +
      Math.sin((2 * Math.PI * p.y) / wave + (phases[axis + 2] ?? 0)));
}
