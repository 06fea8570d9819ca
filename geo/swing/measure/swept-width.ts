import { itemAt, largest } from '../../lists.ts';
import { besidePath, type LaidPath } from '../motion/beside-path.ts';
import { type Motion, onGround, type Pose, poseAt } from '../motion/motion.ts';
import { boxesOf } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type SweptBand, sweptBand } from './swept-band.ts';

/** Pieces of an edge of the body told by the path: on an arc a straight edge is none. Metres. */
const EDGE_PIECE_M = 0.05;

/** A point of the vehicle in its own frame. Metres. */
interface BodyPoint {
  readonly aheadM: number;
  readonly leftM: number;
}

/**
 * Greatest extent of the ground swept by body and rack along the normal to the path they are driven on, metres.
 * The edge of that ground is where the corners ran, where the sides beside the rear axle ran (they touch it: the
 * turning centre lies on the rear axle's line), and the body's own edges where it set out and where it stopped.
 */
export function sweptWidthM(vehicle: SwingVehicle, motion: Motion, path: LaidPath): number {
  const boxes = boxesOf(vehicle);
  const reachM =
    2 * largest(boxes.map(({ backM, frontM, halfWidthM }) => Math.max(-backM, frontM) + halfWidthM));
  const band = sweptBand(-reachM, path.lengthM + reachM);
  const [first, last] = [poseAt(motion, 0), poseAt(motion, motion.travelM.length - 1)];
  const run = (from: BodyPoint, point: BodyPoint, to: BodyPoint): void => {
    const cover = coverFrom(path, band);
    coverEdge(cover, first, from, point);
    for (let index = 0; index < motion.travelM.length; index++) cover(poseAt(motion, index), point);
    coverEdge(cover, last, point, to);
  };
  for (const { backM, frontM, halfWidthM } of boxes) {
    const corners = [
      { aheadM: frontM, leftM: halfWidthM },
      { aheadM: frontM, leftM: -halfWidthM },
      { aheadM: backM, leftM: -halfWidthM },
      { aheadM: backM, leftM: halfWidthM },
    ] as const;
    for (const [index, corner] of corners.entries())
      run(itemAt(corners, (index + 3) % 4), corner, itemAt(corners, (index + 1) % 4));
  }
  for (const leftM of [vehicle.widthM / 2, -vehicle.widthM / 2]) {
    const beside = { aheadM: 0, leftM };
    run(beside, beside, beside);
  }
  return Math.max(vehicle.widthM, band.widestM());
}

/** Covers the way from each place to the next one asked for. */
function coverFrom(path: LaidPath, band: SweptBand): (pose: Pose, point: BodyPoint) => void {
  const place = besidePath(path);
  let before: { xM: number; yM: number; stationM: number; leftM: number } | undefined;
  return (pose, { aheadM, leftM: asideM }) => {
    const { xM, yM } = onGround(pose, aheadM, asideM);
    const { stationM, leftM } = place(xM, yM);
    if (before) {
      const movedM = Math.hypot(xM - before.xM, yM - before.yM);
      // a leap is a point inside a bend that went over to the other leg, not ground that was swept
      if (Math.abs(stationM - before.stationM) <= 1 + 4 * movedM)
        band.cover(before.stationM, before.leftM, stationM, leftM);
    }
    before = { xM, yM, stationM, leftM };
  };
}

function coverEdge(
  cover: (pose: Pose, point: BodyPoint) => void,
  pose: Pose,
  from: BodyPoint,
  to: BodyPoint,
): void {
  const pieces = Math.ceil(Math.hypot(to.aheadM - from.aheadM, to.leftM - from.leftM) / EDGE_PIECE_M);
  for (let piece = 0; piece <= pieces; piece++) {
    const share = pieces === 0 ? 0 : piece / pieces;
    cover(pose, {
      aheadM: from.aheadM + share * (to.aheadM - from.aheadM),
      leftM: from.leftM + share * (to.leftM - from.leftM),
    });
  }
}
