import { awayFromSpan } from '../../earth/segment.ts';
import { onGround, poseAt } from '../motion/motion.ts';
import { swingsOfScene } from './read-scene.ts';
import type { Fixture, Point, Scene } from './scene.ts';
import { atLeastAwayM } from './scenes/fixture-box.ts';
import { boxesOf, reachM } from './scenes/outline.ts';

/** The most that a corner of the vehicle stands beyond a line on the ground. */
export interface OverLine {
  readonly overM: number;
  readonly travelM: number;
  /** "right rear corner", "rack" */
  readonly part: string;
  readonly fixture: Fixture;
}

/** Samples passed over: a decimetre at a time misses less than a millimetre of the most; half a metre shows a crossing. */
const STRIDE = 2;
const AXLE_STRIDE = 10;

/** Kinds of line that a body hangs over without touching. */
const PASSED: readonly Fixture['kind'][] = ['kerb', 'island', 'lane line'];

/**
 * For each kerb and painted line that a corner of the nose or, while it swings out, of the tail passes: by how much.
 * A corner is beyond a line when the line runs between it and the rear axle's middle; a line that the rear axle drives
 * across itself is crossed on purpose. A body over a kerb touches nothing there, but posts and people may stand behind it.
 */
export function overLines(scene: Scene): readonly OverLine[] {
  return scene.fixtures
    .filter(({ kind, line }) => PASSED.includes(kind) && !drivenAcross(scene, line))
    .flatMap((fixture) => {
      const over = mostOver(scene, fixture);
      return over ? [over] : [];
    })
    .sort((a, b) => b.overM - a.overM);
}

function mostOver(scene: Scene, fixture: Fixture): OverLine | undefined {
  const { vehicle, motion } = scene;
  const { nowM, turnAt, turns } = swingsOfScene(scene);
  const reach = reachM(vehicle);
  let best: OverLine | undefined;
  for (let index = 0; index < motion.xM.length; index += STRIDE) {
    const turn = turns[turnAt[index]!];
    if (!turn) continue;
    const out = turn.wheel === 'left' ? 'right' : 'left';
    const swinging = nowM[index]! > 0;
    const pose = poseAt(motion, index);
    if (atLeastAwayM(fixture, pose) > reach) continue;
    const hold = (part: string, aheadM: number, halfWidthM: number): void => {
      const place = onGround(pose, aheadM, out === 'left' ? halfWidthM : -halfWidthM);
      const overM = beyond(pose, place, fixture.line);
      if (overM > (best?.overM ?? 0)) best = { overM, travelM: motion.travelM[index]!, part, fixture };
    };
    for (const { what, backM, frontM, halfWidthM } of boxesOf(vehicle)) {
      if (swinging) hold(what === 'rack' ? 'rack' : `${out} rear corner`, backM, halfWidthM);
      if (what === 'body') hold(`${out} front corner`, frontM, halfWidthM);
    }
  }
  return best;
}

function drivenAcross({ motion }: Scene, line: readonly Point[]): boolean {
  let before: Point = poseAt(motion, 0);
  for (let index = AXLE_STRIDE; index < motion.xM.length + AXLE_STRIDE; index += AXLE_STRIDE) {
    const now = poseAt(motion, Math.min(index, motion.xM.length - 1));
    for (let piece = 1; piece < line.length; piece++)
      if (cross(before, now, line[piece - 1] as Point, line[piece] as Point)) return true;
    before = now;
  }
  return false;
}

/** Distance of a place from a line that runs between it and the axle; 0 where none does. */
function beyond(axle: Point, place: Point, line: readonly Point[]): number {
  let crosses = false;
  for (let index = 1; index < line.length && !crosses; index++)
    crosses = cross(axle, place, line[index - 1] as Point, line[index] as Point);
  if (!crosses) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index < line.length; index++)
    least = Math.min(least, toSegment(place, line[index - 1] as Point, line[index] as Point));
  return least;
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point): number =>
    (q.xM - p.xM) * (r.yM - p.yM) - (q.yM - p.yM) * (r.xM - p.xM);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

function toSegment(p: Point, a: Point, b: Point): number {
  return awayFromSpan(p.xM - a.xM, p.yM - a.yM, b.xM - a.xM, b.yM - a.yM);
}
