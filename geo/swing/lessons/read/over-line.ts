import { smallest } from '../../../lists.ts';
import { onGround, type Pose, poseAt } from '../../motion/motion.ts';
import { boxesOf, reachM } from '../../outline.ts';
import { type Point, type Side, signOf } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture, FixtureKind } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import { atLeastAwayM } from './fixture-box.ts';
import { crosses, piecesOf, toSegmentM } from './lines.ts';
import { oncePerScene } from './once-per-scene.ts';
import type { VehiclePart } from './part.ts';
import { spanAt, swingsOf } from './swings.ts';

/** The most that a corner of the vehicle stands beyond a line on the ground. */
export interface OverLine {
  readonly overM: number;
  readonly travelM: number;
  readonly part: VehiclePart;
  readonly fixture: Fixture;
}

/** Less than this is not worth a word or a figure. Metres. */
export const WORTH_SAYING_M = 0.015;

/** Samples passed over: a decimetre at a time misses less than a millimetre of the most; half a metre shows a crossing. */
const STRIDE = 2;
const AXLE_STRIDE = 10;

/** Kinds of line that a body hangs over without touching. */
const PASSED: readonly FixtureKind[] = ['kerb', 'island', 'lane line'];

/**
 * For each kerb and painted line that a corner of the nose or, while it swings out, of the tail passes: by how much, the
 * most first. A corner is beyond a line when the line runs between it and the rear axle's middle; a line that the rear
 * axle drives across itself is crossed on purpose. A body over a kerb touches nothing there, but posts and people may
 * stand behind it.
 */
export const overLines = oncePerScene(linesPassed);

function linesPassed(scene: Scene): readonly OverLine[] {
  return scene.fixtures
    .filter(({ kind, line }) => PASSED.includes(kind) && !drivenAcross(scene, line))
    .flatMap((fixture) => mostOver(scene, fixture) ?? [])
    .filter(({ overM }) => overM >= WORTH_SAYING_M)
    .sort((a, b) => b.overM - a.overM);
}

function mostOver(scene: Scene, fixture: Fixture): OverLine | undefined {
  const { vehicle, motion } = scene;
  const swings = swingsOf(scene);
  const reach = reachM(vehicle);
  const pieces = piecesOf(fixture.line);
  let best: OverLine | undefined;
  for (let index = 0; index < motion.xM.length; index += STRIDE) {
    const span = spanAt(swings, index);
    if (!span) continue;
    const pose = poseAt(motion, index);
    if (atLeastAwayM(fixture, pose) > reach) continue;
    const swinging = swings.nowM[index]! > 0;
    for (const { part, at } of cornersOut(vehicle, pose, span.line.side)) {
      if (isTail(part) && !swinging) continue;
      const overM = beyondM(pose, at, pieces);
      if (overM > (best?.overM ?? 0)) best = { overM, travelM: motion.travelM[index]!, part, fixture };
    }
  }
  return best;
}

interface WatchedCorner {
  readonly part: VehiclePart;
  readonly at: Point;
}

/** The corners on the side that goes out: of the nose, and of the tail while it swings. */
function cornersOut(vehicle: SwingVehicle, pose: Pose, side: Side): readonly WatchedCorner[] {
  const place = (aheadM: number, halfWidthM: number) => onGround(pose, aheadM, signOf(side) * halfWidthM);
  return boxesOf(vehicle).flatMap(({ what, backM, frontM, halfWidthM }): WatchedCorner[] =>
    what === 'rack'
      ? [{ part: { kind: 'rack corner', side }, at: place(backM, halfWidthM) }]
      : [
          { part: { kind: 'corner', side, end: 'rear' }, at: place(backM, halfWidthM) },
          { part: { kind: 'corner', side, end: 'front' }, at: place(frontM, halfWidthM) },
        ],
  );
}

function isTail(part: VehiclePart): boolean {
  return part.kind !== 'corner' || part.end === 'rear';
}

function drivenAcross({ motion }: Scene, line: readonly Point[]): boolean {
  const pieces = piecesOf(line);
  let before: Point = poseAt(motion, 0);
  for (let index = AXLE_STRIDE; index < motion.xM.length + AXLE_STRIDE; index += AXLE_STRIDE) {
    const now = poseAt(motion, Math.min(index, motion.xM.length - 1));
    if (pieces.some(([from, to]) => crosses(before, now, from, to))) return true;
    before = now;
  }
  return false;
}

/** Distance of a place from a line that runs between it and the axle; 0 where none does. Metres. */
function beyondM(axle: Point, place: Point, pieces: readonly (readonly [Point, Point])[]): number {
  if (!pieces.some(([from, to]) => crosses(axle, place, from, to))) return 0;
  return smallest(pieces.map(([from, to]) => toSegmentM(place, from, to)));
}
