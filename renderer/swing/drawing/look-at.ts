import { batch, computed, signal } from '@preact/signals';
import { smallest } from '../../../geo/lists.ts';
import { swingNow } from '../../../geo/swing/lessons/read/swing-now.ts';
import type { Extent } from '../../../geo/swing/lessons/scene/scene.ts';
import { onGround } from '../../../geo/swing/motion/motion.ts';
import type { Point } from '../../../geo/swing/point.ts';
import { frameOf, type Shown, shown, shownBeside } from '../state/shown.ts';
import { type Box, centredOn, middleOf, type Projection, scaleToFit } from './projection.ts';

/** The room for the drawings on the screen. */
export const whole = signal<Box>({ widthPx: 800, heightPx: 500 });
/** Times the scale at which everything is seen. */
export const closer = signal(1);
/** Keeps the swinging corner in the middle. */
export const onTail = signal(false);

const EDGE_PX = 26;
const MOST_CLOSER = 8;
const MOST_PX_PER_M = 400;
const TAIL_CLOSER = 4;

/** Two drawings lie beside or under each other, whichever shows them larger. */
export const sideBySide = computed(() => {
  if (!shownBeside.value) return false;
  return scaleIn(halfAcross(whole.value)) > scaleIn(halfUp(whole.value));
});
/** The size of one drawing. */
export const box = computed<Box>(() => {
  if (!shownBeside.value) return whole.value;
  return sideBySide.value ? halfAcross(whole.value) : halfUp(whole.value);
});

function halfAcross({ widthPx, heightPx }: Box): Box {
  return { widthPx: Math.floor(widthPx / 2), heightPx };
}

function halfUp({ widthPx, heightPx }: Box): Box {
  return { widthPx, heightPx: Math.floor(heightPx / 2) };
}

/** One scale for all that is drawn, so that lengths can be held against each other. */
function scaleIn(each: Box): number {
  const scales = [shown.value, shownBeside.value].flatMap((of) =>
    of ? [scaleToFit(seen(of), each, EDGE_PX)] : [],
  );
  return Math.min(smallest(scales), MOST_PX_PER_M);
}
const fitting = computed(() => scaleIn(box.value));
export const pxPerM = computed(() => fitting.value * closer.value);

/** What has to be seen of a scene. */
function seen({ scene }: Shown): Extent {
  return scene.extent;
}

/** How one vehicle's scene is laid on its drawing now. */
export function projectionOf(of: Shown): Projection {
  return centredOn(watched(of), pxPerM.value, box.value);
}

/** From afar the whole scene stays put; from near the drawing goes with the vehicle. */
function watched(of: Shown): Point {
  const frame = closer.value > 1 ? frameOf(of) : undefined;
  if (!frame) return middleOf(seen(of));
  if (onTail.value) return swingNow(of.scene, frame).corner;
  const { wheelbaseM, frontOverhangM, rearOverhangM } = of.scene.vehicle;
  return onGround(frame.pose, (wheelbaseM + frontOverhangM - rearOverhangM) / 2, 0);
}

/** So many times nearer, within bounds; from the farthest the whole is seen. */
export function zoom(times: number): void {
  closer.value = Math.min(MOST_CLOSER, Math.max(1, closer.peek() * times));
  if (closer.peek() === 1) onTail.value = false;
}

/** The whole scene, standing still. */
export function fitAll(): void {
  batch(() => {
    closer.value = 1;
    onTail.value = false;
  });
}

/** Near, and going with the corner that swings. */
export function followTail(): void {
  batch(() => {
    closer.value = Math.max(TAIL_CLOSER, closer.peek());
    onTail.value = true;
  });
}
