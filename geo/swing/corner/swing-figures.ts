import { frontAxleRadiusM, fullLockSwingM, tailSwingM } from '../circle.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { frontAxleSwingM } from '../transient.ts';
import { type Corner, fitCorner } from './fit-corner.ts';

/** Tail swing of one turn, metres, not rounded: the gentle way, the plan and the worst. */
export interface SwingFigures {
  /** front axle on the arc */
  readonly gentleM: number;
  /** rear axle on the fitted radius */
  readonly planM: number;
  /** full lock from straight ahead */
  readonly worstM: number;
  readonly worstFromM: number;
  readonly worstToM: number;
}

/** What half a metre of turning radius and 5 cm of overhang leave of the worst figure; metres, either way. */
const WORST_OFF_M = 0.04;

/** The three figures for a turn fitted at `radiusM` (rear-axle centre). */
export function swingFigures(vehicle: SwingVehicle, radiusM: number, turnRad: number): SwingFigures {
  const worstM = fullLockSwingM(vehicle);
  return {
    gentleM: frontAxleSwingM(vehicle, frontAxleRadiusM(vehicle, radiusM), turnRad),
    planM: tailSwingM(vehicle, radiusM, turnRad),
    worstM,
    worstFromM: Math.max(0, Math.min(worstM - WORST_OFF_M, tailSwingM(vehicle, vehicle.lock.highM))),
    worstToM: Math.max(worstM + WORST_OFF_M, tailSwingM(vehicle, vehicle.lock.lowM)),
  };
}

/** How far the widths and the kerb's radius of a corner may be off, either way. Metres. */
export interface CornerDoubt {
  readonly laneOffM: number;
  readonly kerbOffM: number;
}

/**
 * Range of the plan figure over the corner as given and its four extremes: lanes and roads narrower or wider, kerb
 * sharper or rounder. A shunt counts as full lock.
 */
export function planRange(
  corner: Corner,
  doubt: CornerDoubt,
): { readonly fromM: number; readonly toM: number } {
  let fromM = Number.POSITIVE_INFINITY;
  let toM = Number.NEGATIVE_INFINITY;
  for (const [lane, kerb] of [
    [0, 0],
    [-1, -1],
    [-1, 1],
    [1, -1],
    [1, 1],
  ] as const) {
    const fit = fitCorner({
      ...corner,
      entry: wider(corner.entry, lane * doubt.laneOffM),
      exit: wider(corner.exit, lane * doubt.laneOffM),
      kerbRadiusM: Math.max(0, corner.kerbRadiusM + kerb * doubt.kerbOffM),
    });
    const planM = tailSwingM(corner.vehicle, fit.rearAxleRadiusM, corner.turnRad);
    fromM = Math.min(fromM, planM);
    toM = Math.max(toM, planM);
  }
  return { fromM, toM };
}

/** Both widths, each lane of the road off by as much. */
function wider(widths: Corner['entry'], byM: number): Corner['entry'] {
  const lanes = Math.max(1, Math.round(widths.roadM / widths.laneM));
  return { laneM: Math.max(0, widths.laneM + byM), roadM: Math.max(0, widths.roadM + byM * lanes) };
}
