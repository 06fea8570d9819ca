import { apartM, type Point, pointBetween } from '../../geo/earth/point.ts';
import { isInRing } from '../../geo/earth/ring.ts';
import { crossing } from '../../geo/earth/segment.ts';
import { largest, smallest } from '../../geo/lists.ts';
import type { Tags } from '../plan/words.ts';
import { type Line, placeOn, type Vertex, vertexAt } from './lines/line.ts';
import { item } from './lines/plane.ts';
import { meet } from './meet.ts';

/** A closed outline: a wood, a house, a lake. */
export interface Area {
  readonly tags: Tags;
  readonly ring: readonly Point[];
}

/** Members are lines by key (with the vertex where a turn is made) or single vertices. */
interface Restriction {
  readonly tags: Tags;
  readonly from: string;
  readonly to: string;
  readonly via: Vertex;
}

/** A road's end this near to another road is meant to meet it. Metres. */
const REACH_M = 35;
/** What sticks out beyond the last junction by less than this was only overshot. Metres. */
const STUB_M = 45;

interface Box {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** The drawing of the district: every line laid is at once joined to what lies there. */
export class Sheet {
  readonly lines: Line[] = [];
  readonly areas: Area[] = [];
  /** points on no line: place names, service points */
  readonly spots: Vertex[] = [];
  readonly restrictions: Restriction[] = [];
  private readonly boxes = new Map<Line, Box>();
  private readonly rounds: { readonly line: Line; readonly ring: readonly Point[] }[] = [];

  line(key: string): Line {
    const found = this.lines.find((line) => line.key === key);
    if (found === undefined) throw new Error(`no line called ${key}`);
    return found;
  }

  /** A ring road of its own: what begins or ends within it is cut off at it. */
  layRoundabout(line: Line): Line {
    this.rounds.push({ line, ring: [...line.pts] });
    return this.keep(line);
  }

  lay(line: Line): Line {
    const driven = line.kind === 'road' || line.kind === 'path';
    if (driven) this.endOnRoundabouts(line);
    if (driven || line.kind === 'stream') {
      this.snap(line, -1);
      if (driven) this.snap(line, 0);
    }
    const box = boxOf(line);
    for (const other of this.lines)
      if (boxesMeet(box, this.boxes.get(other) ?? boxOf(other))) meet(line, other);
    if (driven) cutStubs(line);
    return this.keep(line);
  }

  /** Joins road ends that had nothing to meet when they were laid, now that the rest is there. */
  joinLooseEnds(): void {
    for (const line of this.lines) {
      if (line.kind !== 'road' || line.separate || item(line.pts, 0) === item(line.pts, -1)) continue;
      this.snap(line, 0);
      this.snap(line, -1);
    }
  }

  private keep(line: Line): Line {
    this.lines.push(line);
    this.boxes.set(line, boxOf(line));
    return line;
  }

  private endOnRoundabouts(line: Line): void {
    for (const { line: round, ring } of this.rounds)
      for (let turn = 0; turn < 2; turn++) {
        const outside = line.pts.findIndex((p) => !isInRing(p, ring));
        if (outside > 0) cutAtRing(line, outside, round);
        line.pts.reverse();
        line.seg.reverse();
      }
  }

  private snap(line: Line, end: 0 | -1): void {
    const tip = item(line.pts, end);
    if (tip.joined) return;
    let best: { other: Line; metres: number; distance: number } | undefined;
    for (const other of this.lines) {
      if (other === line || !mayEndOn(line, other)) continue;
      const box = this.boxes.get(other);
      if (box !== undefined && !isNear(tip, box)) continue;
      const place = placeOn(other, tip);
      if (place.distance < (best?.distance ?? REACH_M)) best = { other, ...place };
    }
    if (best === undefined) return;
    const joint = vertexAt(best.other, best.metres, 4);
    if (line.pts.includes(joint)) return;
    joint.joined = true;
    line.pts[end === 0 ? 0 : line.pts.length - 1] = joint;
    const next = end === 0 ? 1 : line.pts.length - 2;
    // a neighbour hard by the old tip would make a kink
    if (line.pts.length > 2 && apartM(item(line.pts, next), joint) < 8) {
      line.pts.splice(next, 1);
      line.seg.splice(end === 0 ? 0 : line.seg.length - 1, 1);
    }
  }
}

function mayEndOn(line: Line, other: Line): boolean {
  if (line.joins !== undefined) return line.joins.includes(other.key);
  if (line.kind === 'stream') return other.kind === 'river' || other.kind === 'stream';
  if (line.separate === true || other.separate === true) return false;
  return other.kind === 'road' || (other.kind === 'path' && line.kind === 'path');
}

/** Cuts the line's beginning, which lies within the ring, off where it leaves it. */
function cutAtRing(line: Line, outside: number, round: Line): void {
  const a = item(line.pts, outside - 1);
  const b = item(line.pts, outside);
  for (let i = 1; i < round.pts.length; i++) {
    const hit = crossing(a, b, item(round.pts, i - 1), item(round.pts, i));
    if (hit === undefined) continue;
    const joint = vertexAt(round, placeOn(round, pointBetween(a, b, hit.t)).metres, 2);
    joint.joined = true;
    line.pts.splice(0, outside, joint);
    line.seg.splice(0, outside - 1);
    return;
  }
}

function cutStubs(line: Line): void {
  for (let turn = 0; turn < 2; turn++) {
    const joint = line.pts.findIndex((p) => p.joined);
    if (joint > 0 && joint < line.pts.length - 1) {
      let stub = 0;
      for (let i = 0; i < joint; i++) stub += apartM(item(line.pts, i), item(line.pts, i + 1));
      if (stub < STUB_M) {
        line.pts.splice(0, joint);
        line.seg.splice(0, joint);
      }
    }
    line.pts.reverse();
    line.seg.reverse();
  }
}

function boxOf(line: Line): Box {
  const xs = line.pts.map((p) => p.x);
  const ys = line.pts.map((p) => p.y);
  return { west: smallest(xs), east: largest(xs), south: smallest(ys), north: largest(ys) };
}

function boxesMeet(a: Box, b: Box): boolean {
  return a.west <= b.east && b.west <= a.east && a.south <= b.north && b.south <= a.north;
}

function isNear(p: Point, box: Box): boolean {
  return (
    p.x > box.west - REACH_M &&
    p.x < box.east + REACH_M &&
    p.y > box.south - REACH_M &&
    p.y < box.north + REACH_M
  );
}
