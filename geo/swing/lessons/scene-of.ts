import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Draft } from './draft.ts';
import { extentOf } from './extent.ts';
import type { LessonId, Scene } from './scene.ts';
import { driveLegs } from './scenes/legs.ts';
import { mirrorMotion, mirrorPoint, otherSide } from './scenes/mirror.ts';
import { LEARN } from './settings.ts';

/** Drives a draft and, for a wheel that goes right first, mirrors it. */
export function sceneOf(lesson: LessonId, vehicle: SwingVehicle, draft: Draft, mirror: boolean): Scene {
  const driven = driveLegs(vehicle, draft.start, draft.legs, draft.reversing === true);
  const motion = mirror ? mirrorMotion(driven) : driven;
  const fixtures = mirror
    ? draft.fixtures.map((fixture) => ({ ...fixture, line: fixture.line.map(mirrorPoint) }))
    : draft.fixtures;
  const see = mirror ? (draft.see ?? []).map(mirrorPoint) : (draft.see ?? []);
  return {
    lesson,
    title: draft.title,
    learn: LEARN[lesson],
    vehicle,
    fixtures,
    motion,
    reversing: draft.reversing === true,
    swingSide: mirror ? otherSide(draft.swingSide) : draft.swingSide,
    extent: extentOf(vehicle, motion, fixtures, see),
  };
}
