import { given } from '../../../given.ts';
import { radiusOfShareM } from '../../circle.ts';
import { POST_BACK_M } from '../../corner/clearance.ts';
import { MODEL_OFF_M } from '../../model-off.ts';
import { steeringForGap, straightFirstM } from '../../pass-gap.ts';
import type { Side } from '../../point.ts';
import type { Fixture, FixtureRole } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import type { LessonSettings } from '../scene/settings.ts';
import type { Contact } from './contact.ts';
import { carBeside, gapNeededM } from './gap-needed.ts';
import { atTightest, swingDoubtOf } from './lock-doubt.ts';

/** What is beside the vehicle, the gap to it, and the gap that the run needs to pass it. Metres. */
interface BesideGap {
  readonly beside: FixtureRole;
  readonly gapM: number;
  readonly neededM: number;
  /** on top of that, for what is worked out may be off */
  readonly sureM: number;
}

/** What to do about a run, or why nothing need be done. */
export type Advice =
  /** the gap does; `stopShort` of something else that the run ends in */
  | ({ readonly kind: 'gap does'; readonly stopShort?: Fixture } & BesideGap)
  /**
   * The gap does not do: go `straightM` straight on before turning (on top of what is set; missing where that does not
   * help), or turn no more than `lockShare` of full lock from straight.
   */
  | ({ readonly kind: 'gap too small'; readonly lockShare: number; readonly straightM?: number } & BesideGap)
  | { readonly kind: 'over the dome' }
  | { readonly kind: 'back up' }
  | { readonly kind: 'turn later' }
  | {
      readonly kind: 'turn earlier' /** or turn the wheel harder: it is not at its lock */;
      readonly orHarder: boolean;
    }
  | { readonly kind: 'room for the tail'; readonly side: Side }
  | { readonly kind: 'farther ahead' }
  | { readonly kind: 'more room' };

/** @returns undefined where a run touches nothing and is not about a gap, and of a drive by hand */
export function adviseFor(scene: Scene, contact: Contact | undefined): Advice | undefined {
  if (scene.steered) return undefined;
  const beside = besideOf(scene);
  if (beside && scene.settings) return adviseForGap(scene, scene.settings, beside, contact);
  return contact ? adviseForContact(scene, contact) : undefined;
}

/** What a lesson about a gap is held against: beside a kerb the post behind it. */
function besideOf({ lesson, settings }: Scene): { role: FixtureRole; gapM: number } | undefined {
  if (!settings) return undefined;
  const { beside, gapM } = settings;
  if (lesson === 'reverse') return { role: 'parked car', gapM };
  if (lesson !== 'leave') return undefined;
  if (beside === 'kerb') return { role: 'post behind the kerb', gapM: gapM + POST_BACK_M };
  return { role: beside, gapM };
}

function adviseForGap(
  scene: Scene,
  { lockShare, straightM }: LessonSettings,
  { role, gapM }: { role: FixtureRole; gapM: number },
  contact: Contact | undefined,
): Advice {
  const sureM = MODEL_OFF_M + swingDoubtOf(scene).moreM;
  const gap = { beside: role, gapM, neededM: gapNeededM(scene), sureM };
  if (gap.neededM + sureM <= gapM)
    return { kind: 'gap does', ...gap, ...given({ stopShort: contact?.fixture }) };
  const { reversing } = scene;
  // what is advised must do by the tightest lock that there may be, and with room to spare
  const vehicle = atTightest(scene.vehicle);
  const beside = { gapM: gapM - MODEL_OFF_M, reversing };
  const endM = carEndM(scene);
  const farther =
    endM === undefined
      ? 0
      : straightFirstM(vehicle, radiusOfShareM(vehicle, lockShare), beside, endM) - straightM;
  return {
    kind: 'gap too small',
    ...gap,
    lockShare: steeringForGap(vehicle, beside).lockShare,
    ...given({ straightM: farther > 0 ? farther : undefined }),
  };
}

/** Where the parked car ends, along the way from where the rear axle starts; undefined where there is no car. Metres. */
function carEndM(scene: Scene): number | undefined {
  const car = carBeside(scene);
  if (!car) return undefined;
  const startXM = scene.motion.xM[0]!;
  return scene.reversing ? startXM - car.fromXM : car.toXM - startXM;
}

/** What helps depends on the end that touched. */
function adviseForContact(
  { motion, swingSide, turn, settings }: Scene,
  { part, index, fixture }: Contact,
): Advice {
  if (fixture.role === 'dome') return { kind: 'over the dome' };
  if (turn?.room === 'back up') return { kind: 'back up' };
  if ('end' in part && part.end === 'front') {
    const inside = fixture.role === 'inner kerb' || fixture.role === 'kerb of the corner';
    return inside ? { kind: 'turn later' } : { kind: 'turn earlier', orHarder: settings?.lockShare !== 1 };
  }
  const isTail = part.kind === 'corner' || part.kind === 'rack' || part.kind === 'rack corner';
  if (isTail) return { kind: 'room for the tail', side: swingSide };
  return motion.steerRad[index]! === 0 ? { kind: 'more room' } : { kind: 'farther ahead' };
}
