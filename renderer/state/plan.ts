import { computed, signal } from '@preact/signals';
import { PLAN_PLACES_MAX } from '../../main/contract/limits.ts';
import type { KeptPlace } from '../../main/contract/settings.ts';
import { type OpenedDrive, openedDrive } from './opened.ts';
import { firstStep, type Steps, stepBack, stepOn, stepTo } from './steps.ts';

/** A place that a planned drive leads through. */
export interface PlanPlace extends Readonly<KeptPlace> {
  /** tells it from the others while it is moved about */
  readonly key: number;
}

/** A drive that is being planned. */
interface Plan {
  readonly places: Steps<readonly PlanPlace[]>;
  /** what was open when it was begun */
  readonly before: OpenedDrive | undefined;
  /** why the last change came to no drive */
  readonly problem?: string;
  /** a place lies where no road is on the map */
  readonly offMap?: boolean;
  /** what there is to say of the drive it came to */
  readonly say?: readonly string[];
}

/** The plan that is open. */
export const plan = signal<Plan | undefined>(undefined);
export const places = computed<readonly PlanPlace[]>(() => plan.value?.places.now ?? []);

/** The plan that a drive was laid out by, for as long as that drive is open or can be come back to. */
export const laidOut = signal<{ readonly driveId: string; readonly plan: Plan } | undefined>(undefined);

/** The last change of the plan, open or closed, came to no drive: what is drawn is the one before it. */
export const planFails = computed(() => {
  const closed = laidOut.value;
  const of =
    plan.value ?? (closed?.driveId === openedDrive.value?.followed.driveId ? closed?.plan : undefined);
  return of?.problem !== undefined;
});

/** The plan that the last window was closed over, for as long as nobody has gone on with it or begun another. */
export const leftPlan = signal<readonly KeptPlace[]>([]);

/** The last plan whose drive was written to a file. */
export const savedPlan = signal<Plan | undefined>(undefined);

/** The places of a plan that is in no file of the user's: the one that is open, else the one the open drive is of. */
export const unsavedPlaces = computed<readonly KeptPlace[]>(() => {
  const of = plan.value ?? laidOut.value?.plan;
  if (of === undefined || of.places.now.length === 0) return leftPlan.value;
  if (of.places === savedPlan.value?.places) return [];
  return of.places.now.map(({ key: _, ...place }) => place);
});

/** A click on the map puts a place there. */
export const placing = signal(false);

let lastKey = 0;
export const nextKey = (): number => ++lastKey;

export function openPlan(before: OpenedDrive | undefined, begun: readonly KeptPlace[] = []): void {
  plan.value = { places: firstStep(begun.map((place) => ({ ...place, key: nextKey() }))), before };
}

/** One change of the places, which can be taken back. */
export function changePlaces(change: (now: readonly PlanPlace[]) => readonly PlanPlace[]): void {
  movePlan((steps) => stepTo(steps, change(steps.now)));
}

export function undoPlaces(): void {
  movePlan(stepBack);
}

export function redoPlaces(): void {
  movePlan(stepOn);
}

function movePlan(move: (steps: Steps<readonly PlanPlace[]>) => Steps<readonly PlanPlace[]>): void {
  const now = plan.peek();
  if (!now) return;
  const moved = move(now.places);
  if (moved !== now.places) plan.value = { places: moved, before: now.before };
}

/** A place put at the end, or in between. @param at its place in the order; without it last */
export function putPlace(place: Omit<PlanPlace, 'key'>, at = places.peek().length): void {
  if (places.peek().length >= PLAN_PLACES_MAX) return;
  changePlaces((now) => [...now.slice(0, at), { ...place, key: nextKey() }, ...now.slice(at)]);
}

/** A place put elsewhere: what it was called counts no more. */
export function movePlace(key: number, to: { readonly lat: number; readonly lon: number }): void {
  changePlaces((now) => now.map((each) => (each.key === key ? { key, ...to, stop: each.stop } : each)));
}

export function removePlace(key: number): void {
  changePlaces((now) => now.filter((each) => each.key !== key));
}

/** @param by places further on, negative: back */
export function reorderPlace(key: number, by: number): void {
  const now = places.peek();
  const from = now.findIndex((each) => each.key === key);
  const to = from + by;
  const moved = now[from];
  if (!moved || to < 0 || to >= now.length) return;
  changePlaces(() => {
    const others = now.filter((each) => each.key !== key);
    return [...others.slice(0, to), moved, ...others.slice(to)];
  });
}

export function setStop(key: number, stop: boolean): void {
  changePlaces((now) => now.map((each) => (each.key === key ? { ...each, stop } : each)));
}
