import type { Motion } from '../motion/motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Drafter } from './draft.ts';
import { extentOf } from './extent.ts';
import type { LessonId, LessonSettings, Scene } from './scene.ts';
import { sceneOf } from './scene-of.ts';
import { draftLeave } from './scenes/leave.ts';
import { stepInto } from './scenes/legs.ts';
import { draftMiniRoundabout } from './scenes/mini-roundabout.ts';
import { draftPitch } from './scenes/pitch.ts';
import { draftReverse } from './scenes/reverse.ts';
import { draftSideRoad } from './scenes/side-road.ts';

const DRAFTERS: Readonly<Record<LessonId, Drafter>> = {
  leave: draftLeave,
  'side-road': draftSideRoad,
  'mini-roundabout': draftMiniRoundabout,
  pitch: draftPitch,
  reverse: draftReverse,
  // as long as no turn of a drive was picked (see `driveTurnScene`)
  'drive-turn': draftSideRoad,
};

/** A lesson built for a vehicle: what stands there and how it is driven. Two vehicles with the same settings are comparable. */
export function buildScene(lesson: LessonId, vehicle: SwingVehicle, settings: LessonSettings): Scene {
  const draft = DRAFTERS[lesson](vehicle, settings, settings.driveSide === settings.turnSide);
  // across a mini-roundabout the wheel goes first to the side one drives on, else as one is told
  const firstTo = lesson === 'mini-roundabout' ? settings.driveSide : settings.turnSide;
  return { ...sceneOf(lesson, vehicle, draft, firstTo === 'right'), settings };
}

/** The same place with a motion steered by hand; which end swings, and where to, as it last moved. */
export function steeredScene(scene: Scene, motion: Motion): Scene {
  let index = motion.xM.length - 1;
  while (index > 0 && stepInto(motion, index) === 0) index--;
  const steerRad = motion.steerRad[index] ?? 0;
  return {
    ...scene,
    steered: true,
    motion,
    reversing: index > 0 ? stepInto(motion, index) < 0 : scene.reversing,
    swingSide: steerRad === 0 ? scene.swingSide : steerRad > 0 ? 'right' : 'left',
    extent: extentOf(scene.vehicle, motion, [], [scene.extent.from, scene.extent.to]),
  };
}
