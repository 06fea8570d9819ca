import { apartM, type Point } from '../../geo/earth/point.ts';
import type { GridPlan } from '../plan/town.ts';
import type { Bend, Tags } from '../plan/words.ts';
import type { Ground } from './ground.ts';
import { lengthOf, pointAt, points, simplify, smooth, sway } from './lines/curve.ts';
import { type Line, type LineKind, lineLength, tagsAt, type Vertex, vertexAt } from './lines/line.ts';
import { makeLine } from './lines/make-line.ts';
import { item, step } from './lines/plane.ts';
import { between, type Random } from './lines/random.ts';
import type { Sheet } from './sheet.ts';

/** Everything that draws streets needs. */
export interface Site {
  readonly sheet: Sheet;
  readonly ground: Ground;
  readonly random: Random;
}

const BARRIERS: readonly LineKind[] = ['rail', 'river', 'coast'];
/** A street keeps this far from railway, river and shore, and counts as lying on a road nearer than the second. Metres. */
const KEEP_M = 14;
const ON_ROAD_M = 11;

/** Lays a street where the ground lets it: the longest free part. @returns undefined when too little is left */
export function street(
  site: Site,
  key: string,
  through: readonly Point[],
  bend: Bend,
  tags: Tags | (() => Tags),
): Line | undefined {
  const swayed = sway(smooth(through, 10), site.random, bend.amplitude, bend.wave);
  const free = longestRun(
    swayed,
    (p) => site.ground.clearance(p, 30, BARRIERS) > KEEP_M && !nearTrunk(site, p),
  );
  if (free.length < 2 || lengthOf(free) < 45) return undefined;
  const covered = free.filter((p) => site.ground.clearance(p, 40, ['road']) < ON_ROAD_M).length / free.length;
  if (covered > 0.6) return undefined;
  return site.sheet.lay(
    makeLine(key, 'road', simplify(free, 0.6), typeof tags === 'function' ? tags() : tags),
  );
}

function nearTrunk(site: Site, p: Point): boolean {
  const others = site.sheet.lines.filter((line) => line.separate !== true);
  return site.ground.clearance(p, 22, ['road'], others) < 20;
}

function longestRun(line: readonly Point[], isFree: (p: Point) => boolean): Point[] {
  let best: Point[] = [];
  let run: Point[] = [];
  for (const p of line) {
    run = isFree(p) ? [...run, p] : [];
    if (run.length > best.length) best = run;
  }
  return best;
}

/** Streets in two directions across a quarter, a little out of true. */
export function grid(
  site: Site,
  { key, origin, angle, along, across, over }: GridPlan,
  tags: () => Tags,
): void {
  const corner = item(points(origin), 0);
  const at = (u: number, v: number): Point =>
    step(corner, angle, u + between(site.random, -7, 7), v + between(site.random, -7, 7));
  const bend: Bend = { amplitude: 4, wave: 260 };
  for (const [i, v] of across.entries()) {
    const through = runOver(along, over.alongStart, over.alongEnd).map((u) => at(u, v));
    street(site, `${key}-u${i}`, through, bend, tags);
  }
  for (const [i, u] of along.entries()) {
    const through = runOver(across, over.acrossStart, over.acrossEnd).map((v) => at(u, v));
    street(site, `${key}-v${i}`, through, bend, tags);
  }
}

function runOver(stops: readonly number[], before: number, after: number): number[] {
  const first = item(stops, 0);
  const last = item(stops, -1);
  const sign = Math.sign(last - first);
  return [first - sign * before, ...stops, last + sign * after];
}

export interface Branch {
  readonly lengthM: number;
  /** metres kept free of other roads on either side, beyond the first few */
  readonly roomM: number;
  readonly kind?: LineKind;
  readonly bendTo?: number;
  /** asked only when the branch is laid: names are not to be wasted */
  readonly tags: () => Tags;
  readonly endTags?: Tags;
  /** where side roads of this kind may leave */
  readonly where?: (at: Point) => boolean;
}

/** A side road off a line, so many metres along and to one side; only where there is room. */
function branch(
  site: Site,
  key: string,
  from: Line,
  { atM, side }: { readonly atM: number; readonly side: 'left' | 'right' },
  how: Branch,
): Line | undefined {
  const { at, heading } = pointAt(from.pts, atM);
  if (how.where?.(at) === false) return undefined;
  const here = tagsAt(from, atM);
  if (here['bridge'] !== undefined || here['tunnel'] !== undefined || here['maxheight'] !== undefined)
    return undefined;
  const away = heading + (side === 'left' ? 1 : -1) * (Math.PI / 2) + between(site.random, -0.25, 0.25);
  const turn = how.bendTo ?? between(site.random, -0.9, 0.9);
  const count = Math.max(3, Math.round(how.lengthM / 18));
  const pts: Point[] = [at];
  for (let i = 1; i <= count; i++)
    pts.push(step(item(pts, -1), away + turn * ((i - 1) / count) ** 1.3, how.lengthM / count));
  const clear = pts.every((p, i) => {
    const gone = apartM(p, at);
    if (i === 0) return true;
    if (site.ground.clearance(p, how.roomM + 4, undefined, [from]) < how.roomM) return false;
    return gone < how.roomM + 6 || site.ground.clearance(p, how.roomM + 4, undefined) >= how.roomM;
  });
  if (!clear) return undefined;
  const joint = vertexAt(from, atM, 3);
  if (joint.joined && joint.tags !== undefined) return undefined;
  joint.joined = true;
  const vertices: Vertex[] = [
    joint,
    ...simplify(pts, 0.8)
      .slice(1)
      .map(({ x, y }) => ({ x, y })),
  ];
  const tip = item(vertices, -1);
  if (how.endTags !== undefined) tip.tags = { ...how.endTags };
  return site.sheet.lay(makeLine(key, how.kind ?? 'road', vertices, how.tags()));
}

/** Where side roads leave a line: every so many metres (least and most), from and to so many along it. */
export interface Leaving {
  readonly everyM: readonly [least: number, most: number];
  readonly fromM?: number;
  readonly toM?: number;
}

/** Side roads on both sides all along a line. */
export function branches(
  site: Site,
  key: string,
  from: Line,
  { everyM, fromM = 0, toM = Number.POSITIVE_INFINITY }: Leaving,
  how: () => Branch,
): Line[] {
  const laid: Line[] = [];
  const endM = Math.min(lineLength(from) - 25, toM);
  let sides: readonly ('left' | 'right')[] = site.random() < 0.5 ? ['left', 'right'] : ['right', 'left'];
  for (let atM = Math.max(30, fromM); atM < endM; atM += between(site.random, ...everyM)) {
    for (const side of sides) {
      const line = branch(site, `${key}-${laid.length}`, from, { atM, side }, how());
      if (line === undefined) continue;
      laid.push(line);
      break;
    }
    sides = [...sides].reverse();
  }
  return laid;
}
