import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { LessonId } from '../scene/lesson.ts';
import type { Scene } from '../scene/scene.ts';
import type { LessonSettings } from '../scene/settings.ts';
import type { Drafter } from './draft.ts';
import { draftLeave } from './leave.ts';
import { draftMiniRoundabout } from './mini-roundabout.ts';
import { mirrored } from './mirror.ts';
import { draftPitch } from './pitch.ts';
import { draftReverse } from './reverse.ts';
import { sceneOf } from './scene-of.ts';
import { draftSideRoad } from './side-road.ts';

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
  const scene = { ...sceneOf(lesson, vehicle, DRAFTERS[lesson](vehicle, settings)), settings };
  // across a mini-roundabout the wheel goes first to the side one drives on, else as one is told
  const firstTo = lesson === 'mini-roundabout' ? settings.driveSide : settings.turnSide;
  return firstTo === 'right' ? mirrored(scene) : scene;
}
