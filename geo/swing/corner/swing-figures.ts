import { largest, smallest } from '../../lists.ts';
import { frontAxleRadiusM, fullLockSwingM, tailSwingM } from '../circle.ts';
import { widestHalfM } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type Corner, type CornerWidths, fitCorner, radiusInRoomM } from './fit-corner.ts';
import { frontAxleSwingM } from './front-axle-swing.ts';

/** Tail swing of one turn, metres, not rounded: the gentle way, the plan and the worst. */
interface SwingFigures {
  /** front axle on the arc */
  readonly gentleM: number;
  /** rear axle on the fitted radius */
  readonly planM: number;
  /** full lock from straight ahead */
  readonly worstM: number;
  readonly worstFromM: number;
  readonly worstToM: number;
}

/**
 * What half a metre of turning radius and 5 cm of overhang leave of the worst figure, and, where full lock was measured,
 * the overhang alone; metres, either way.
 */
const WORST_OFF_M = { computed: 0.04, measured: 0.02 } as const;

/** The three figures for a turn fitted at `radiusM` (rear-axle centre). */
export function swingFigures(vehicle: SwingVehicle, radiusM: number, turnRad: number): SwingFigures {
  return {
    gentleM: frontAxleSwingM(vehicle, frontAxleRadiusM(vehicle, radiusM), turnRad),
    planM: tailSwingM(vehicle, radiusM, turnRad),
    ...fullLockSwings(vehicle),
  };
}

/** The tail's swing at full lock from straight, and its range: the same wherever either is told. */
export function fullLockSwings(
  vehicle: SwingVehicle,
): Pick<SwingFigures, 'worstM' | 'worstFromM' | 'worstToM'> {
  const worstM = fullLockSwingM(vehicle);
  const offM = WORST_OFF_M[vehicle.lock.from === 'measured' ? 'measured' : 'computed'];
  return {
    worstM,
    worstFromM: Math.max(0, Math.min(worstM - offM, tailSwingM(vehicle, vehicle.lock.highM))),
    worstToM: Math.max(worstM + offM, tailSwingM(vehicle, vehicle.lock.lowM)),
  };
}

/** What there is beside a vehicle in the middle of its lane, and how far its tail goes over that. Metres. */
interface StartInLane {
  readonly laneM: number;
  readonly gapM: number;
  readonly overM: number;
}

/** The start of a turn in the middle of a lane, to the millimetre, so that what is shown adds up. */
export function startInLane(vehicle: SwingVehicle, laneM: number, planM: number): StartInLane {
  const gapM = toMm(Math.max(0, laneM / 2 - widestHalfM(vehicle)));
  return { laneM, gapM, overM: toMm(Math.max(0, planM - gapM)) };
}

function toMm(m: number): number {
  return Math.round(m * 1000) / 1000;
}

/** How far the figures of a corner may be off, either way: 0 where they are mapped. Metres. */
interface CornerDoubt {
  readonly entry: CornerWidths;
  readonly exit: CornerWidths;
  readonly kerbOffM: number;
}

/** Narrowest or widest roads with the sharpest or roundest kerb. */
const EXTREMES = [
  [0, 0],
  [-1, -1],
  [-1, 1],
  [1, -1],
  [1, 1],
] as const;

/**
 * Range of the plan figure over the corner as given and its four extremes, each in the room that it takes first, and
 * in the room that the corner as given takes where that will do too. Backing up counts as full lock.
 */
export function planRange(
  corner: Corner,
  doubt: CornerDoubt,
): { readonly fromM: number; readonly toM: number } {
  const { room } = fitCorner(corner);
  const plans: number[] = [];
  for (const [width, kerb] of EXTREMES) {
    const varied = {
      ...corner,
      entry: wider(corner.entry, doubt.entry, width),
      exit: wider(corner.exit, doubt.exit, width),
      kerbRadiusM: Math.max(0, corner.kerbRadiusM + kerb * doubt.kerbOffM),
    };
    const fit = fitCorner(varied);
    const radii = [fit.rearAxleRadiusM];
    if (fit.room !== room && room !== 'back up') {
      const radiusM = radiusInRoomM(varied, room);
      if (radiusM !== undefined) radii.push(radiusM);
    }
    for (const radiusM of radii) plans.push(tailSwingM(corner.vehicle, radiusM, corner.turnRad));
  }
  return { fromM: smallest(plans), toM: largest(plans) };
}

function wider(widths: CornerWidths, offM: CornerWidths, times: number): CornerWidths {
  return {
    laneM: Math.max(0, widths.laneM + times * offM.laneM),
    roadM: Math.max(0, widths.roadM + times * offM.roadM),
  };
}
