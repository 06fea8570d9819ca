import { frontCornerRadiusM, tailSwingM } from '../circle.ts';
import { widestHalfM } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** A corner with the widths that may be used, from the inner kerb's line to the outer limit. Metres, radians. */
export interface CornerRoom {
  readonly vehicle: SwingVehicle;
  /** how far the heading changes, over 0 and under π */
  readonly turnRad: number;
  readonly entryM: number;
  readonly exitM: number;
  readonly kerbRadiusM: number;
  /** kept free on every side */
  readonly clearanceM: number;
}

/** How much is left over, negative where it does not fit. Metres. */
export interface Spare {
  /** between the edges of the straights, beside the inner kerb; only ever less on a tighter arc */
  readonly besideM: number;
  /** at the rounded kerb; may rise and fall with the radius */
  readonly atKerbM: number;
}

/*
 * Seen from above: the vehicle comes along a straight, its rear axle takes one arc round the centre O, and it leaves on a
 * straight. The inner kerb is an arc of radius k round K, tangent to both inner kerb lines. On the outside two points
 * decide: the tail, swinging out over the entry's outer limit, which must be S = R + W/2 + swing + m from O; and the front
 * corner, reaching for the exit's outer limit, E = its radius + m. So O must lie at least p = S − A − k farther in than K,
 * measured square to the entry, and q = E − B − k square to the exit. On the inside the body's side, R − W/2 from O, must
 * keep outside the kerb: beside the straights max(p, q) + k, and where O lies within the angle of the turn as seen
 * from K, |OK| + k. Both p and q at their least are best for all of these, so this is exact, no approximation.
 */

/** What is left over when the rear axle takes an arc of this radius round the corner. */
export function spareAt(corner: CornerRoom, radiusM: number): Spare {
  const { vehicle, turnRad, entryM, exitM, kerbRadiusM, clearanceM } = corner;
  const sideM = radiusM + vehicle.widthM / 2;
  const halfM = widestHalfM(vehicle);
  const tailM = sideM + tailSwingM(vehicle, radiusM, turnRad);
  const p = tailM + clearanceM - entryM - kerbRadiusM;
  const q = exitReachM(vehicle, radiusM, turnRad) + clearanceM - exitM - kerbRadiusM;
  const innerM = radiusM - halfM - clearanceM - kerbRadiusM;
  const besideM = innerM - Math.max(p, q);
  const cos = Math.cos(turnRad);
  if (p - q * cos < 0 || q - p * cos < 0) return { besideM, atKerbM: besideM };
  return { besideM, atKerbM: innerM - Math.hypot(p, (q - p * cos) / Math.sin(turnRad)) };
}

/** How far from the arc's centre, square to the exit, the vehicle reaches: its front corner, in a slight turn already at the start. */
function exitReachM(vehicle: SwingVehicle, radiusM: number, turnRad: number): number {
  const sideM = radiusM + vehicle.widthM / 2;
  const noseM = vehicle.wheelbaseM + vehicle.frontOverhangM;
  const slight = turnRad < Math.atan2(noseM, sideM);
  const frontM = slight
    ? sideM * Math.cos(turnRad) + noseM * Math.sin(turnRad)
    : frontCornerRadiusM(vehicle, radiusM);
  return Math.max(frontM, radiusM + widestHalfM(vehicle));
}
