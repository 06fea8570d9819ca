import type { Turn } from '../../report/turn.ts';
import { driveTurnScene } from '../../swing/lessons/build/drive-turn.ts';
import { fanOf } from '../../swing/lessons/read/fan.ts';
import { tracesOf } from '../../swing/lessons/read/traces.ts';
import { outlineOnGround } from '../../swing/motion/outline-on-ground.ts';
import type { Point } from '../../swing/point.ts';
import { swingVehicleOf } from '../../swing/swing-vehicle.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { type Markup, markup } from '../page/markup.ts';
import type { BoxMm } from './projection.ts';
import { pathAlong, thinLine } from './thin-line.ts';

const POSITIONS = 6;
const EDGE_MM = 2;
/** Metres that no sketch shows. */
const THIN_M = 0.02;
const BAR_M = 5;

/** A turn from above, to scale: kerbs and lines, the vehicle on its way, and where its tail and inner wheel go. */
export function turnSketch(turn: Turn, card: VehicleCard, { widthMm, heightMm }: BoxMm): Markup {
  const scene = driveTurnScene(turn, swingVehicleOf(card));
  const { from, to } = scene.extent;
  const scale = Math.min(
    (widthMm - 2 * EDGE_MM) / Math.max(1, to.xM - from.xM),
    (heightMm - 2 * EDGE_MM) / Math.max(1, to.yM - from.yM),
  );
  const [x0, y0] = [
    widthMm / 2 - (scale * (from.xM + to.xM)) / 2,
    heightMm / 2 + (scale * (from.yM + to.yM)) / 2,
  ];
  const path = (line: readonly Point[]) =>
    pathAlong(
      thinLine(
        line.map(({ xM, yM }) => ({ x: x0 + xM * scale, y: y0 - yM * scale })),
        THIN_M * scale,
      ),
    );
  const traces = tracesOf(scene);
  return markup`<svg class="turn" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}" aria-hidden="true">${scene.fixtures.map(
    ({ line, closed, hard }) =>
      markup`<path class="${hard ? 'turn-kerb' : 'turn-line'}" d="${path(line)}${closed ? 'Z' : ''}"/>`,
  )}${fanOf(scene, POSITIONS).map(
    (pose) => markup`<path class="turn-vehicle" d="${path(outlineOnGround(scene.vehicle, pose))}Z"/>`,
  )}<path class="turn-wheel" d="${path(traces.wheel)}"/><path class="turn-tail" d="${path(traces.tail)}"/><path class="turn-bar" d="M2 ${heightMm - 1.5}v-1m0 0.5h${(BAR_M * scale).toFixed(2)}m0 -0.5v1"/><text class="turn-bar-text" x="${(3 + BAR_M * scale).toFixed(2)}" y="${heightMm - 1.2}">${BAR_M} m</text></svg>`;
}
