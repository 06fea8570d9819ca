import { batch, effect } from '@preact/signals';
import { fullLockRad, type HandDrive, takeWheel } from '../../geo/swing/lessons/scenes/legs.ts';
import { type Motion, poseAt } from '../../geo/swing/motion/motion.ts';
import { byHand, handDriven, shown, toStart, touchedByHand, wheelShare } from './state.ts';

/** Walking pace, and from the middle to the lock in two seconds. */
const SPEED_MS = 1.3;
const SHARE_PER_S = 0.5;
const LONGEST_STEP_S = 0.1;

/** What is held down: keys, or the buttons on the screen. */
export interface Held {
  move: -1 | 0 | 1;
  wheel: -1 | 0 | 1;
}
export const held: Held = { move: 0, wheel: 0 };

let drive: HandDrive | undefined;
/** The way it last rolled while it was free: the one that led into what is touched. */
let ledBack = false;

/** The vehicle where the lesson starts, wheels straight, under the user's hand. */
export function startByHand(): void {
  batch(() => {
    toStart();
    const begun = shown.value;
    if (!begun) return;
    const { card, scene } = begun;
    drive = takeWheel(scene.vehicle, poseAt(scene.motion, 0));
    wheelShare.value = 0;
    ledBack = scene.reversing;
    handDriven.value = { card, motion: drive.motion() };
  });
}

/** Rolls a way at once, backwards negative. */
export function rollBy(moveM: number): void {
  if (!drive || !byHand.peek() || moveM === 0) return;
  const back = moveM < 0;
  // touching, only the way that leads off it is open, for as long as it takes
  if (!touchedByHand.peek()) ledBack = back;
  else if (back === ledBack) return;
  drive.roll(moveM);
  showDriven(drive.motion());
}

/** Turns the wheel, standing. @param share −1 right lock … 1 left lock */
export function turnWheel(share: number): void {
  const scene = shown.peek()?.scene;
  if (!drive || !scene || !byHand.peek()) return;
  const within = Math.max(-1, Math.min(1, share));
  drive.steer(within * fullLockRad(scene.vehicle));
  const motion = drive.motion();
  batch(() => {
    wheelShare.value = within;
    showDriven(motion);
  });
}

function showDriven(motion: Motion): void {
  const driven = handDriven.peek();
  if (driven) handDriven.value = { ...driven, motion };
}

/** Turns and rolls for as long as something is held. @returns the way to end it */
export function moveWhileHeld(page: Window): () => void {
  let asked = 0;
  let before: number | undefined;
  const step = (now: number) => {
    asked = page.requestAnimationFrame(step);
    const seconds = before === undefined ? 0 : Math.min(LONGEST_STEP_S, (now - before) / 1000);
    before = now;
    if (held.wheel !== 0) turnWheel(wheelShare.peek() + held.wheel * SHARE_PER_S * seconds);
    if (held.move !== 0) rollBy(held.move * SPEED_MS * seconds);
  };
  const end = effect(() => {
    page.cancelAnimationFrame(asked);
    before = undefined;
    held.move = 0;
    held.wheel = 0;
    if (byHand.value) asked = page.requestAnimationFrame(step);
  });
  return () => {
    end();
    page.cancelAnimationFrame(asked);
  };
}
