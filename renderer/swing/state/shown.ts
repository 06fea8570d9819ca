import { computed } from '@preact/signals';
import { smallest } from '../../../geo/lists.ts';
import { buildScene } from '../../../geo/swing/lessons/build/build-scene.ts';
import { driveTurnScene } from '../../../geo/swing/lessons/build/drive-turn.ts';
import { steeredScene } from '../../../geo/swing/lessons/hand/hand-drive.ts';
import type { Judged } from '../../../geo/swing/lessons/read/judge.ts';
import { judgeByLock } from '../../../geo/swing/lessons/read/judge-by-lock.ts';
import { type Reading, readScene } from '../../../geo/swing/lessons/read/read-scene.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { type Frame, frameAt, lengthOf } from '../../../geo/swing/motion/frame.ts';
import { type SwingVehicle, tryingRack } from '../../../geo/swing/swing-vehicle.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings, vehicle, vehicles } from '../../state/kept.ts';
import { besideId, chosen, handDriven, lesson, picked, rackWanted, travelM, wheel } from './lesson.ts';

/** One vehicle in its scene, with what is read off it. */
export interface Shown {
  readonly card: VehicleCard;
  readonly scene: Scene;
  /** undefined while it is steered by hand: then the moment counts, not the way */
  readonly judged: Judged | undefined;
}

/** Another vehicle does not move like the one that was driven. */
const handMotion = computed(() => {
  const driven = handDriven.value;
  return driven !== undefined && driven.card === vehicle.value?.card ? driven.motion : undefined;
});
export const byHand = computed(() => handMotion.value !== undefined);

export const shown = computed(() => (vehicle.value ? showing(vehicle.value.card) : undefined));
export const shownBeside = computed(() => {
  // chosen as the main one meanwhile, it is not drawn twice
  const other = vehicles.value.find(({ id }) => id === besideId.value && id !== vehicle.value?.id);
  return other && !byHand.value ? showing(other.card) : undefined;
});

function showing(card: VehicleCard): Shown {
  const as = tryingRack(card, { wanted: rackWanted.value });
  const driven = handMotion.value;
  // what is touched by hand is seen as it is driven, not sought along the whole way each time
  if (driven) return { card, scene: steeredScene(sceneFor(as), driven), judged: undefined };
  return { card, ...judgeByLock(sceneFor, as, settings.value.margins.physicalWidthM) };
}

/** The scene as the lesson drives it. */
function sceneFor(driven: SwingVehicle): Scene {
  const turn = picked.value?.turn;
  if (lesson.value === 'drive-turn' && turn) return driveTurnScene(turn, driven, wheel.value);
  return buildScene(lesson.value, driven, chosen.value);
}

/** The longest of what is shown: both are scrubbed together. */
export const wayM = computed(() =>
  Math.max(
    shown.value ? lengthOf(shown.value.scene.motion) : 0,
    shownBeside.value ? lengthOf(shownBeside.value.scene.motion) : 0,
  ),
);
/** Where the first of them touches something. */
export const contactM = computed(() => {
  const touches = [shown.value, shownBeside.value].flatMap((each) => each?.judged?.contact?.travelM ?? []);
  return touches.length > 0 ? smallest(touches) : undefined;
});

const frame = computed<Frame | undefined>(() => frameOf(shown.value));
/** Where one of the vehicles stands now. */
export function frameOf(of: Shown | undefined): Frame | undefined {
  return of && frameAt(of.scene.motion, atTravelM(of));
}
/** By hand it is always where it has got to. */
export function atTravelM({ scene }: Shown): number {
  return byHand.value ? lengthOf(scene.motion) : travelM.value;
}

export const reading = computed<Reading | undefined>(() => {
  const [of, at] = [shown.value, frame.value];
  return of && at ? readScene(of.scene, at.index) : undefined;
});
