import { given } from '../../../given.ts';
import type { Side } from '../../point.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import { cutInAt } from './cut-in.ts';
import { nearestTo, standingAt } from './nearest.ts';
import { spanAt, swingsOf } from './swings.ts';

/** What is read off a scene at one sample. Metres, radians. */
export interface Reading {
  /** tail (or nose, reversing) beyond the body's line when the wheel was last straight, now and at most so far */
  readonly swingM: number;
  readonly swingMostM: number;
  /** the side that goes out now */
  readonly swingSide: Side;
  /** the inner rear wheel inside the front wheel's track, now */
  readonly cutInM: number;
  readonly steerRad: number;
  readonly headingChangeRad: number;
  /** least distance to anything hard, now; negative is inside it, infinite where nothing hard stands there */
  readonly nearestM: number;
  readonly nearest?: Fixture;
}

/** What the scene shows at one sample; an index beyond either end reads that end. */
export function readScene(scene: Scene, index: number): Reading {
  const { motion, fixtures } = scene;
  const now = Math.max(0, Math.min(motion.xM.length - 1, Math.round(index)));
  const swings = swingsOf(scene);
  const near = nearestTo(standingAt(scene, now), fixtures);
  const span = spanAt(swings, now);
  return {
    swingM: swings.nowM[now]!,
    swingMostM: swings.mostM[now]!,
    swingSide: span?.line.side ?? scene.swingSide,
    cutInM: cutInAt(scene, now, span?.wheel),
    steerRad: motion.steerRad[now]!,
    headingChangeRad: Math.abs(motion.headingRad[now]! - motion.headingRad[0]!),
    nearestM: near?.gapM ?? Number.POSITIVE_INFINITY,
    ...given({ nearest: near?.fixture }),
  };
}
