import { itemAt } from '../../../lists.ts';
import { lockRad } from '../../circle.ts';
import { type Motion, type Pose, poseAt } from '../../motion/motion.ts';
import { type Recorder, recordMotion } from '../../motion/record-motion.ts';
import { stepBy, stepInto } from '../../motion/step.ts';
import { otherSide } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import { extentOf } from '../build/extent.ts';
import { isTouching } from '../read/judge.ts';
import { nearestTo } from '../read/nearest.ts';
import type { Scene } from '../scene/scene.ts';

/**
 * A drive by hand in the place of a lesson, recorded sample by sample. It changes as it is driven; the scene is handed in
 * each time, since a rack may be put on meanwhile.
 */
export interface HandDrive {
  readonly record: Recorder;
  pose: Pose;
  steerRad: number;
  travelM: number;
  /** the way it last rolled while it was free: the one that led into what is touched */
  ledBack: boolean;
}

/** The vehicle where a lesson starts, wheels straight, under the hand. */
export function takeWheel(scene: Scene): HandDrive {
  const drive = {
    record: recordMotion(),
    pose: poseAt(scene.motion, 0),
    steerRad: 0,
    travelM: 0,
    ledBack: scene.reversing,
  };
  note(drive);
  return drive;
}

/** Turns the wheel, standing. @param share −1 right lock … 1 left lock; @returns where it stands then */
export function turnWheel(drive: HandDrive, vehicle: SwingVehicle, share: number): number {
  const within = Math.max(-1, Math.min(1, share));
  const steerRad = within * lockRad(vehicle);
  if (steerRad !== drive.steerRad) {
    drive.steerRad = steerRad;
    note(drive);
  }
  return within;
}

/**
 * Rolls with the wheel as it is, backwards negative; touching, only the way that leads off what is touched.
 * @returns whether it rolled
 */
export function roll(drive: HandDrive, scene: Scene, byM: number): boolean {
  if (byM === 0) return false;
  const back = byM < 0;
  const free = !isHandTouching(drive, scene);
  if (free) drive.ledBack = back;
  else if (back === drive.ledBack) return false;
  const rolledM = free ? untilTouchM(drive, scene, byM) : byM;
  drive.pose = stepBy(scene.vehicle, drive.pose, drive.steerRad, rolledM);
  drive.travelM += Math.abs(rolledM);
  note(drive);
  return true;
}

/** A way is halved so often: to less than a tenth of a millimetre. */
const HALVINGS = 13;

/** As far of a way as it takes to touch, the touch just reached; all of it where nothing is touched at its end. Metres. */
function untilTouchM(drive: HandDrive, scene: Scene, byM: number): number {
  const touchesAt = (rolledM: number) =>
    isHandTouching({ ...drive, pose: stepBy(scene.vehicle, drive.pose, drive.steerRad, rolledM) }, scene);
  if (!touchesAt(byM)) return byM;
  let [freeM, touchM] = [0, byM];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middleM = (freeM + touchM) / 2;
    if (touchesAt(middleM)) touchM = middleM;
    else freeM = middleM;
  }
  return touchM;
}

/** What stands there is touched where the vehicle is now. */
function isHandTouching({ pose, steerRad }: HandDrive, scene: Scene): boolean {
  const near = nearestTo({ vehicle: scene.vehicle, pose, steerRad }, scene.fixtures);
  return near !== undefined && isTouching({ nearestM: near.gapM });
}

/** All that was driven so far. */
export function drivenByHand({ record }: HandDrive): Motion {
  return record.motion();
}

function note({ record, pose, steerRad, travelM }: HandDrive): void {
  record.add(pose, travelM, steerRad);
}

/** The same place with a motion steered by hand; which end swings, and where to, as it last moved. */
export function steeredScene(scene: Scene, motion: Motion): Scene {
  let index = motion.xM.length - 1;
  while (index > 0 && stepInto(motion, index) === 0) index--;
  const steerRad = itemAt(motion.steerRad, index);
  return {
    ...scene,
    steered: true,
    motion,
    reversing: index > 0 ? stepInto(motion, index) < 0 : scene.reversing,
    swingSide: steerRad === 0 ? scene.swingSide : otherSide(steerRad > 0 ? 'left' : 'right'),
    extent: extentOf(scene.vehicle, motion, [], [scene.extent.from, scene.extent.to]),
  };
}
