import { onGround, poseAt } from '../../motion/motion.ts';
import { otherSide, type Point, signOf } from '../../point.ts';
import type { FixtureRole } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import { contactOf, leastGapOf } from './contact.ts';
import { cutInAt } from './cut-in.ts';
import { gapBesideM, swingingEnd } from './judge.ts';
import { oncePerScene } from './once-per-scene.ts';
import { swingNow } from './swing-now.ts';
import { mostSwingM, spanAt, swingsOf } from './swings.ts';

/** What a figure of a drawing is about. */
export type Keyed =
  | { readonly what: 'start gap'; readonly beside?: FixtureRole }
  | { readonly what: 'swing'; readonly end: 'tail' | 'nose' }
  | { readonly what: 'cut-in' }
  | { readonly what: 'touch'; readonly fixture: FixtureRole }
  | { readonly what: 'nearest'; readonly fixture: FixtureRole };

/** A figure of a drawing: its number stands at a place of the drawing, and beside the figure. Metres. */
export type Key = Keyed & { readonly key: number; readonly at: Point; readonly m: number };

/** Less than this has no number of its own. Metres. */
const LEAST_M = 0.02;
/** Samples passed over where the inner wheel's cut-in is looked for. */
const STRIDE = 10;

/** The figures of a scene in the order in which they are met, numbered from 1; none by hand. */
export const keysOf: (scene: Scene) => readonly Key[] = oncePerScene((scene) => {
  if (scene.steered) return [];
  const found = [startGap(scene), swing(scene), cutIn(scene), touchOrNearest(scene)];
  return found.flatMap((each) => each ?? []).map((each, index) => ({ ...each, key: index + 1 }));
});

type Found = Keyed & { readonly at: Point; readonly m: number };

/** In the middle of the gap, beside the middle between the axles. */
function startGap(scene: Scene): Found | undefined {
  const { vehicle, motion, swingSide, starts } = scene;
  const m = starts?.gapM ?? gapBesideM(scene);
  if (m === undefined) return undefined;
  const at = onGround(
    poseAt(motion, 0),
    vehicle.wheelbaseM / 2,
    signOf(swingSide) * (vehicle.widthM / 2 + m / 2),
  );
  return { what: 'start gap', ...(starts ? { beside: starts.beside } : {}), at, m };
}

/** At the corner, where it is farthest out. */
function swing(scene: Scene): Found | undefined {
  const m = mostSwingM(scene);
  if (m < LEAST_M) return undefined;
  const { nowM } = swingsOf(scene);
  let most = 0;
  for (let index = 0; index < nowM.length; index++) if (nowM[index]! > nowM[most]!) most = index;
  const { corner } = swingNow(scene, { pose: poseAt(scene.motion, most), index: most });
  return { what: 'swing', end: swingingEnd(scene), at: corner, m };
}

/** At the inner rear wheel, where it runs farthest inside the front one's track. */
function cutIn(scene: Scene): Found | undefined {
  const swings = swingsOf(scene);
  const { motion, vehicle, swingSide } = scene;
  let [m, most] = [0, 0];
  for (let index = 0; index < motion.xM.length; index += STRIDE) {
    const nowM = cutInAt(scene, index, spanAt(swings, index)?.wheel);
    if (nowM > m) [m, most] = [nowM, index];
  }
  if (m < LEAST_M) return undefined;
  const wheel = spanAt(swings, most)?.wheel ?? otherSide(swingSide);
  return {
    what: 'cut-in',
    at: onGround(poseAt(motion, most), 0, (signOf(wheel) * vehicle.trackM) / 2),
    m,
  };
}

function touchOrNearest(scene: Scene): Found | undefined {
  const contact = contactOf(scene);
  if (contact) return { what: 'touch', fixture: contact.fixture.role, at: contact.at, m: contact.travelM };
  const least = leastGapOf(scene);
  return least && { what: 'nearest', fixture: least.fixture.role, at: least.at, m: least.gapM };
}
