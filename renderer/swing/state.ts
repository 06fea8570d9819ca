import { batch, computed, signal } from '@preact/signals';
import type { Finding } from '../../geo/report/report.ts';
import type { Turn } from '../../geo/report/turn.ts';
import { buildScene, steeredScene } from '../../geo/swing/lessons/build-scene.ts';
import { contactOf } from '../../geo/swing/lessons/contact.ts';
import { readScene } from '../../geo/swing/lessons/read-scene.ts';
import type { Contact, LessonId, LessonSettings, Reading, Scene } from '../../geo/swing/lessons/scene.ts';
import { driveTurnScene } from '../../geo/swing/lessons/scenes/drive-turn.ts';
import { DEFAULTS } from '../../geo/swing/lessons/settings.ts';
import type { Motion } from '../../geo/swing/motion/motion.ts';
import { type SwingVehicle, swingVehicleOf } from '../../geo/swing/swing-vehicle.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { report } from '../state/check.ts';
import { settings, vehicle, vehicles } from '../state/kept.ts';
import { type Decision, decide } from './decides.ts';
import { type Frame, frameAt, lengthOf } from './frames.ts';

/** A rack to try out on a card that has none: as deep as a common one, as wide as the body. */
export const TRY_OUT_RACK_M = 0.7;

/** A turn of the drive that the lesson shows. */
export interface PickedTurn {
  readonly findingId: string;
  readonly turn: Turn;
  readonly where: string;
}

export const lesson = signal<LessonId>('leave');
export const picked = signal<PickedTurn | undefined>(undefined);
/** What the trainer has set, lesson by lesson. */
const chosenIn = signal<Readonly<Partial<Record<LessonId, Partial<LessonSettings>>>>>({});
export const chosen = computed<LessonSettings>(() => ({
  ...usualHere(DEFAULTS[lesson.value]),
  ...chosenIn.value[lesson.value],
}));

/** A lesson as one begins it where the open drive drives on the other side: the same seen in a mirror. */
function usualHere(usual: LessonSettings): LessonSettings {
  const side = driveTurns.value[0]?.turn?.driveSide ?? usual.driveSide;
  if (side === usual.driveSide) return usual;
  return { ...usual, driveSide: side, turnSide: usual.turnSide === 'left' ? 'right' : 'left' };
}
/** undefined: as the card says */
export const rackWanted = signal<boolean | undefined>(undefined);
/** the vehicle drawn beside for comparison */
export const besideId = signal<string | undefined>(undefined);

/** Where along its way the vehicle stands, metres of travel. */
export const travelM = signal(0);
export const playing = signal(false);
/** What was driven by hand so far, while that is on, and the card it was begun with. */
export const handDriven = signal<{ readonly card: VehicleCard; readonly motion: Motion } | undefined>(
  undefined,
);
/** Another vehicle does not move like the one that was driven. */
const handMotion = computed(() => {
  const driven = handDriven.value;
  return driven !== undefined && driven.card === vehicle.value?.card ? driven.motion : undefined;
});
/** Where the wheel in the hand stands: −1 right lock … 1 left lock. */
export const wheelShare = signal(0);
export const byHand = computed(() => handMotion.value !== undefined);

/** The card's rack, or the one to try out. */
export const rackOn = computed(() => rackWanted.value ?? vehicle.value?.card.rack?.fitted === true);

/** One vehicle in its scene, with what is read off it. */
export interface Shown {
  readonly card: VehicleCard;
  readonly scene: Scene;
  readonly contact: Contact | undefined;
  /** undefined while it is steered by hand: then the moment counts, not the way */
  readonly decision: Decision | undefined;
}

export const shown = computed(() => (vehicle.value ? showing(vehicle.value.card) : undefined));
export const shownBeside = computed(() => {
  // chosen as the main one meanwhile, it is not drawn twice
  const other = vehicles.value.find(({ id }) => id === besideId.value && id !== vehicle.value?.id);
  return other && !byHand.value ? showing(other.card) : undefined;
});

function showing(card: VehicleCard): Shown {
  const scene = sceneFor(withRack(card, rackWanted.value));
  const driven = handMotion.value;
  if (!driven) {
    const contact = contactOf(scene);
    return { card, scene, contact, decision: decide(scene, contact, settings.value.margins.physicalWidthM) };
  }
  // what is touched by hand is seen as it is driven, not sought along the whole way each time
  return { card, scene: steeredScene(scene, driven), contact: undefined, decision: undefined };
}

/** The scene as the lesson drives it. */
export function sceneFor(driven: SwingVehicle): Scene {
  const turn = picked.value?.turn;
  if (lesson.value === 'drive-turn' && turn) return driveTurnScene(turn, driven);
  return buildScene(lesson.value, driven, chosen.value);
}

/** @param wanted undefined: as the card says */
export function withRack(card: VehicleCard, wanted: boolean | undefined): SwingVehicle {
  const bare = swingVehicleOf(card, wanted ?? card.rack?.fitted === true);
  if (wanted !== true || card.rack) return bare;
  return { ...bare, rack: { lengthM: TRY_OUT_RACK_M, widthM: card.widthM } };
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
  const touches = [shown.value, shownBeside.value].flatMap((each) =>
    each?.contact ? [each.contact.travelM] : [],
  );
  return touches.length > 0 ? Math.min(...touches) : undefined;
});

export const frame = computed<Frame | undefined>(() => frameOf(shown.value));
/** Where one of the vehicles stands now. */
export function frameOf(of: Shown | undefined): Frame | undefined {
  return of && frameAt(of.scene.motion, atTravelM(of));
}
/** By hand it is always where it has got to. */
export function atTravelM({ scene }: Shown): number {
  return byHand.value ? lengthOf(scene.motion) : travelM.value;
}

/** What stands there is touched at this moment of the drive by hand. */
export const touchedByHand = computed(
  () => byHand.value && reading.value !== undefined && reading.value.nearestM <= 0,
);

export const reading = computed<Reading | undefined>(() => {
  const [of, at] = [shown.value, frame.value];
  return of && at ? readScene(of.scene, at.index) : undefined;
});

/** Starts another lesson from its first moment. */
export function choose(id: LessonId): void {
  batch(() => {
    lesson.value = id;
    toStart();
  });
}

/** Changes what the trainer can set; the moment shown stays where it is. */
export function set(change: Partial<LessonSettings>): void {
  const [id, before] = [lesson.peek(), chosenIn.peek()];
  batch(() => {
    chosenIn.value = { ...before, [id]: { ...before[id], ...change } };
    handDriven.value = undefined;
  });
}

/** Back to the first moment of the lesson, the wheel out of the hand. */
export function toStart(): void {
  batch(() => {
    playing.value = false;
    travelM.value = 0;
    handDriven.value = undefined;
  });
}

/** Shows a turn of the drive with its own geometry. */
export function pick(finding: Finding): void {
  const { turn, id, road } = finding;
  if (!turn) return;
  batch(() => {
    picked.value = { findingId: id, turn, where: road ?? '' };
    choose('drive-turn');
  });
}

/** Turns of the open drive's findings, for the lesson's list. */
export const driveTurns = computed(() =>
  (report.value?.findings ?? []).filter(({ turn }) => turn !== undefined),
);
