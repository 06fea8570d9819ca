import { batch, computed, signal } from '@preact/signals';
import type { Finding } from '../../../geo/report/report.ts';
import type { Turn } from '../../../geo/report/turn.ts';
import type { Wheel } from '../../../geo/swing/lessons/build/drive-turn.ts';
import type { LessonId } from '../../../geo/swing/lessons/scene/lesson.ts';
import { DEFAULTS, defaultsOn, type LessonSettings } from '../../../geo/swing/lessons/scene/settings.ts';
import type { Motion } from '../../../geo/swing/motion/motion.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { report } from '../../state/check.ts';
import { vehicle } from '../../state/kept.ts';

/** A turn of the drive that the lesson shows. */
interface PickedTurn {
  readonly findingId: string;
  readonly turn: Turn;
  readonly where: string;
}

export const lesson = signal<LessonId>('leave');
export const picked = signal<PickedTurn | undefined>(undefined);

/** How the turn shown is driven; each begins as its row judged it. */
export const wheel = signal<Wheel>('the sweep that fits');

/** Turns of the open drive's findings, for the lesson's list. */
export const driveTurns = computed(() =>
  (report.value?.findings ?? []).filter(({ turn }) => turn !== undefined),
);

/** What the trainer has set, lesson by lesson. */
const chosenIn = signal<Readonly<Partial<Record<LessonId, Partial<LessonSettings>>>>>({});
/** As one begins it where the open drive drives, and what has been set since. */
export const chosen = computed<LessonSettings>(() => {
  const driveSide = driveTurns.value[0]?.turn?.driveSide ?? DEFAULTS[lesson.value].driveSide;
  return { ...defaultsOn(lesson.value, driveSide), ...chosenIn.value[lesson.value] };
});

/** A rack put on or taken off to try, by the vehicle it was tried on: another is as its card says. */
const rackTried = signal<{ readonly id: string; readonly on: boolean } | undefined>(undefined);
/** undefined: as the card says */
export const rackWanted = computed(() => {
  const tried = rackTried.value;
  return tried !== undefined && tried.id === vehicle.value?.id ? tried.on : undefined;
});
/** Puts a rack on the vehicle, or takes it off, to see what it does. */
export function tryRack(on: boolean): void {
  const id = vehicle.peek()?.id;
  rackTried.value = id === undefined ? undefined : { id, on };
}
/** The card's rack, or the one to try out. */
export const rackOn = computed(() => rackWanted.value ?? vehicle.value?.card.rack?.fitted === true);
/** the vehicle drawn beside for comparison */
export const besideId = signal<string | undefined>(undefined);

/** Where along its way the vehicle stands, metres of travel. */
export const travelM = signal(0);
export const playing = signal(false);

/** What was driven by hand so far, while that is on, and the card it was begun with. */
export const handDriven = signal<{ readonly card: VehicleCard; readonly motion: Motion } | undefined>(
  undefined,
);

/** In place of a lesson the vehicle is measured in the yard. */
export const inYard = signal(false);

/** Starts another lesson from its first moment. */
export function choose(id: LessonId): void {
  batch(() => {
    inYard.value = false;
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

/** Drives the turn shown otherwise, from its first moment. */
export function turnWheel(as: Wheel): void {
  batch(() => {
    wheel.value = as;
    toStart();
  });
}

/** The yard, the wheel out of the hand. */
export function goToYard(): void {
  batch(() => {
    toStart();
    inYard.value = true;
  });
}

/** Shows a turn of the drive with its own geometry. */
export function pick(finding: Finding): void {
  const { turn, id, road } = finding;
  if (!turn) return;
  batch(() => {
    picked.value = { findingId: id, turn, where: road ?? '' };
    wheel.value = 'the sweep that fits';
    choose('drive-turn');
  });
}
