import { batch, effect, signal } from '@preact/signals';
import {
  drivenByHand,
  type HandDrive,
  roll,
  takeWheel,
  turnWheel,
} from '../../../geo/swing/lessons/hand/hand-drive.ts';
import { handDriven, toStart } from './lesson.ts';
import { byHand, shown } from './shown.ts';

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

/** Where the wheel in the hand stands: −1 right lock … 1 left lock. */
export const wheelShare = signal(0);

let drive: HandDrive | undefined;

/** The vehicle where the lesson starts, wheels straight, under the user's hand. */
export function startByHand(): void {
  batch(() => {
    toStart();
    const begun = shown.value;
    if (!begun) return;
    drive = takeWheel(begun.scene);
    wheelShare.value = 0;
    handDriven.value = { card: begun.card, motion: drivenByHand(drive) };
  });
}

/** Rolls a way at once, backwards negative. */
export function rollBy(moveM: number): void {
  const scene = shown.peek()?.scene;
  if (!drive || !scene || !byHand.peek()) return;
  if (roll(drive, scene, moveM)) showDriven(drive);
}

/** Turns the wheel, standing. @param share −1 right lock … 1 left lock */
export function turnWheelTo(share: number): void {
  const scene = shown.peek()?.scene;
  if (!drive || !scene || !byHand.peek()) return;
  const standing = drive;
  batch(() => {
    wheelShare.value = turnWheel(standing, scene.vehicle, share);
    showDriven(standing);
  });
}

function showDriven(by: HandDrive): void {
  const driven = handDriven.peek();
  if (driven) handDriven.value = { ...driven, motion: drivenByHand(by) };
}

/** Turns and rolls for as long as something is held. @returns the way to end it */
export function moveWhileHeld(page: Window): () => void {
  let asked = 0;
  let before: number | undefined;
  const step = (now: number) => {
    asked = page.requestAnimationFrame(step);
    const seconds = before === undefined ? 0 : Math.min(LONGEST_STEP_S, (now - before) / 1000);
    before = now;
    if (held.wheel !== 0) turnWheelTo(wheelShare.peek() + held.wheel * SHARE_PER_S * seconds);
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
