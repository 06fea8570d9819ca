import { arcFrom, straightFrom } from '../motion/articulation.ts';
import { tailsOf } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** After this many wheelbases on the exit straight nothing is left of the turn. */
const SETTLED_WHEELBASES = 20;
/** Halvings of at most some hundred metres: the peak's place to under 0.1 mm, its height far better. */
const HALVINGS = 24;

/** The front axle led along straight, arc of radius `arcRadiusM`, straight. Metres, radians. */
interface Led {
  readonly wheelbaseM: number;
  readonly arcRadiusM: number;
  readonly turnRad: number;
}

/**
 * Tail swing beyond the body's line with the front axle led along straight, arc of radius `arcRadiusM`, straight:
 * the gentle way round, metres. The larger of body corner and rack corner. NaN for an arc no wider than the wheelbase.
 * @param turnRad how far the path turns
 */
export function frontAxleSwingM(vehicle: SwingVehicle, arcRadiusM: number, turnRad: number): number {
  if (!(arcRadiusM > vehicle.wheelbaseM)) return Number.NaN;
  const led = { wheelbaseM: vehicle.wheelbaseM, arcRadiusM, turnRad };
  let most = Number.NEGATIVE_INFINITY;
  for (const { aheadM, halfWidthM } of tailsOf(vehicle)) {
    const beyond = halfWidthM - vehicle.widthM / 2;
    most = Math.max(most, beyond + peakOfCorner(led, -aheadM, halfWidthM));
  }
  return most;
}

/**
 * Most of d(s) = (L + b)·sin θ − w(1 − cos θ) − y, y the front axle's way to the inside. It rises from nought to one
 * peak and falls; its slope, with θ′ = sin α / L and y′ = sin ψ, is halved down to where it changes sign.
 */
function peakOfCorner(led: Led, behindM: number, wM: number): number {
  const { wheelbaseM, arcRadiusM, turnRad } = led;
  const arcM = arcRadiusM * turnRad;
  const steerAtEnd = arcFrom(wheelbaseM, 0, 1 / arcRadiusM, arcM);
  const steerAt = (travelM: number): number =>
    travelM <= arcM
      ? arcFrom(wheelbaseM, 0, 1 / arcRadiusM, travelM)
      : straightFrom(wheelbaseM, steerAtEnd, travelM - arcM);
  let lowM = 0;
  let highM = arcM + SETTLED_WHEELBASES * wheelbaseM;
  for (let i = 0; i < HALVINGS; i++) {
    const midM = (lowM + highM) / 2;
    const steer = steerAt(midM);
    const path = Math.min(midM / arcRadiusM, turnRad);
    const theta = path - steer;
    const slope =
      (((wheelbaseM + behindM) * Math.cos(theta) - wM * Math.sin(theta)) * Math.sin(steer)) / wheelbaseM -
      Math.sin(path);
    if (slope > 0) lowM = midM;
    else highM = midM;
  }
  const path = Math.min(lowM / arcRadiusM, turnRad);
  const theta = path - steerAt(lowM);
  const insideM = arcRadiusM * (1 - Math.cos(path)) + Math.max(0, lowM - arcM) * Math.sin(turnRad);
  return (wheelbaseM + behindM) * Math.sin(theta) - wM * (1 - Math.cos(theta)) - insideM;
}
