import { given } from '../../../given.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { LessonId } from '../scene/lesson.ts';
import type { Scene } from '../scene/scene.ts';
import type { Draft } from './draft.ts';
import { extentOf } from './extent.ts';
import { driveLegs } from './legs.ts';

/** Drives a draft, the wheel to the left first as it is drawn. */
export function sceneOf(lesson: LessonId, vehicle: SwingVehicle, draft: Draft): Scene {
  const { fixtures, swingSide, reversing = false, starts, see = [] } = draft;
  const motion = driveLegs(vehicle, draft);
  return {
    lesson,
    vehicle,
    fixtures,
    motion,
    reversing,
    swingSide,
    ...given({ starts }),
    extent: extentOf(vehicle, motion, fixtures, see),
  };
}
