import { apartM, headingRad, type Point, pointBetween } from '../../../geo/earth/point.ts';
import { nearestOn } from '../../../geo/earth/segment.ts';
import type { Through } from '../../plan/words.ts';
import { item, step } from './plane.ts';
import { between, type Random } from './random.ts';

/** The points that a plan gives as text. */
export function points(through: Through): Point[] {
  return through.split(', ').map((pair) => {
    const [x, y] = pair.split(' ').map(Number);
    if (x === undefined || y === undefined || Number.isNaN(x + y)) throw new Error(`no point: ${pair}`);
    return { x, y };
  });
}

export function lengthOf(line: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += apartM(item(line, i - 1), item(line, i));
  return sum;
}

/** The point so many metres along a line, and the heading there. */
export function pointAt(line: readonly Point[], metres: number): { at: Point; heading: number } {
  let left = metres;
  for (let i = 1; i < line.length; i++) {
    const a = item(line, i - 1);
    const b = item(line, i);
    const run = apartM(a, b);
    if (left <= run || i === line.length - 1)
      return { at: pointBetween(a, b, run === 0 ? 0 : Math.min(1, left / run)), heading: headingRad(a, b) };
    left -= run;
  }
  throw new Error('a line needs two points');
}

/** A smooth line through the given points (Catmull-Rom), one point about every `spacing` metres. */
export function smooth(through: readonly Point[], spacing = 15): Point[] {
  if (through.length < 3) return resample(through, spacing);
  const out: Point[] = [];
  for (let i = 0; i + 1 < through.length; i++) {
    const p1 = item(through, i);
    const p2 = item(through, i + 1);
    const p0 = through[i - 1] ?? pointBetween(p2, p1, 2);
    const p3 = through[i + 2] ?? pointBetween(p1, p2, 2);
    const count = Math.max(1, Math.ceil(apartM(p1, p2) / spacing));
    for (let k = 0; k < count; k++) out.push(catmullRom(p0, p1, p2, p3, k / count));
  }
  out.push(item(through, -1));
  return out;
}

/** Centripetal, so that it neither loops nor cusps between uneven points. */
function catmullRom(p0: Point, p1: Point, p2: Point, p3: Point, t: number): Point {
  const d1 = Math.sqrt(apartM(p0, p1)) || 1;
  const d2 = Math.sqrt(apartM(p1, p2)) || 1;
  const d3 = Math.sqrt(apartM(p2, p3)) || 1;
  const axis = (get: (p: Point) => number) => {
    const m1 = d2 * ((get(p1) - get(p0)) / d1 - (get(p2) - get(p0)) / (d1 + d2)) + get(p2) - get(p1);
    const m2 = d2 * ((get(p3) - get(p2)) / d3 - (get(p3) - get(p1)) / (d2 + d3)) + get(p2) - get(p1);
    const a = 2 * (get(p1) - get(p2)) + m1 + m2;
    const b = -3 * (get(p1) - get(p2)) - 2 * m1 - m2;
    return ((a * t + b) * t + m1) * t + get(p1);
  };
  return { x: axis((p) => p.x), y: axis((p) => p.y) };
}

function resample(line: readonly Point[], spacing: number): Point[] {
  const total = lengthOf(line);
  const count = Math.max(1, Math.round(total / spacing));
  return Array.from({ length: count + 1 }, (_, i) => pointAt(line, (total * i) / count).at);
}

/** Sways a line sideways by up to about `amplitude` metres in waves of the given length; both ends stay put. */
export function sway(line: readonly Point[], random: Random, amplitude: number, wave: number): Point[] {
  if (amplitude === 0) return [...line];
  // short waves are flatter still than long ones, or the line would shiver
  const waves = [1, 0.61, 0.37].map((share) => ({
    size: amplitude * between(random, 0.4, 0.8) * share ** 1.9,
    wave: wave * share * between(random, 0.8, 1.25),
    phase: between(random, 0, 2 * Math.PI),
  }));
  const total = lengthOf(line);
  let gone = 0;
  return line.map((p, i) => {
    if (i > 0) gone += apartM(item(line, i - 1), p);
    const fade = Math.min(1, gone / 120, (total - gone) / 120);
    const left = waves.reduce(
      (sum, w) => sum + w.size * Math.sin((2 * Math.PI * gone) / w.wave + w.phase),
      0,
    );
    const heading = headingRad(line[i - 1] ?? p, line[i + 1] ?? p);
    return step(p, heading, 0, left * fade);
  });
}

/** The line shifted to its left (negative: right) by so many metres. */
export function offset(line: readonly Point[], left: number): Point[] {
  return line.map((p, i) => step(p, headingRad(line[i - 1] ?? p, line[i + 1] ?? p), 0, left));
}

/** Douglas-Peucker: drops points that lie within `tolerance` metres of the line kept. */
export function simplify<T extends Point>(line: readonly T[], tolerance: number): T[] {
  if (line.length < 3) return [...line];
  let worst = 0;
  let at = 0;
  for (let i = 1; i + 1 < line.length; i++) {
    const off = nearestOn(item(line, i), item(line, 0), item(line, -1)).awayM;
    if (off > worst) [worst, at] = [off, i];
  }
  if (worst <= tolerance) return [item(line, 0), item(line, -1)];
  return [...simplify(line.slice(0, at + 1), tolerance).slice(0, -1), ...simplify(line.slice(at), tolerance)];
}

/** A closed ring of `count` points, anticlockwise; the first point is not repeated. */
export function circle(centre: Point, radius: number, count: number): Point[] {
  return Array.from({ length: count }, (_, i) => step(centre, (2 * Math.PI * i) / count, radius));
}
