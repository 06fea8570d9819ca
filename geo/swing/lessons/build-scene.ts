import type { Motion } from '../motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Draft, Drafter } from './draft.ts';
import { extentOf } from './extent.ts';
import { draftLeave } from './leave.ts';
import { driveLegs } from './legs.ts';
import { mirrorMotion, mirrorPoint, otherSide } from './mirror.ts';
import type { LessonId, LessonSettings, Scene } from './scene.ts';
import { LEARN } from './settings.ts';

const DRAFTERS: Readonly<Partial<Record<LessonId, Drafter>>> = {
  leave: draftLeave,
};

/** A lesson built for a vehicle: what stands there and how it is driven. Two vehicles with the same settings are comparable. */
export function buildScene(
  lesson: Exclude<LessonId, 'drive-turn'>,
  vehicle: SwingVehicle,
  settings: LessonSettings,
): Scene {
  const draft = (DRAFTERS[lesson] ?? draftLeave)(vehicle, settings, settings.driveSide === settings.turnSide);
  // the mini-roundabout goes first to the side one drives on, the others as they are told
  const firstTo = lesson === 'mini-roundabout' ? settings.driveSide : settings.turnSide;
  return { ...sceneOf(lesson, vehicle, draft, firstTo === 'right'), settings };
}

/** Drives a draft and, for a wheel that goes right first, mirrors it. */
export function sceneOf(lesson: LessonId, vehicle: SwingVehicle, draft: Draft, mirror: boolean): Scene {
  const driven = driveLegs(vehicle, draft.start, draft.legs);
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

/** The same place with a motion steered by hand (see `takeWheel`). */
export function steeredScene(scene: Scene, motion: Motion): Scene {
  return {
    ...scene,
    motion,
    extent: extentOf(scene.vehicle, motion, scene.fixtures, [scene.extent.from, scene.extent.to]),
  };
}
