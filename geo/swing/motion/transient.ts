import { tailsOf } from '../circle.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/*
 * The front axle led along a straight or an arc, in closed form. With ψ the direction of the path, θ the heading of the
 * vehicle and α = ψ − θ (the single-track steering angle), the rear axle follows as dα/ds = ψ′ − sin α / L, whatever the
 * speed. On a straight this is the tractrix; on an arc of radius r, with t = tan(α/2), it is a Riccati equation with
 * constant terms. The same holds for any guided point that far ahead of the rear axle.
 */

/** Steering angle after travelling straight on: tan(α/2) = tan(α₀/2)·exp(−s/L). Radians, metres. */
export function steerOnStraight(wheelbaseM: number, steerAtStartRad: number, travelM: number): number {
  return 2 * Math.atan(Math.tan(steerAtStartRad / 2) * Math.exp(-travelM / wheelbaseM));
}

/**
 * Steering angle after the front axle has travelled along an arc that bends to the positive side. From straight ahead
 * tan(α/2) = u(1 − E)/(1 − u²E), with k = L/r, q = √(1 − k²), u = (1 − q)/k, E = exp(−s·q/L).
 * NaN for an arc no wider than the wheelbase: no vehicle stays on it.
 */
export function steerOnArc(
  wheelbaseM: number,
  arcRadiusM: number,
  travelM: number,
  steerAtStartRad = 0,
): number {
  const k = wheelbaseM / arcRadiusM;
  if (k >= 1) return Number.NaN;
  const q = Math.sqrt(1 - k * k);
  // (1 − q)/k without the loss of digits on a wide arc
  const steady = k / (1 + q);
  const start = Math.tan(steerAtStartRad / 2);
  const away = ((start - steady) / (start - 1 / steady)) * Math.exp((-travelM * q) / wheelbaseM);
  return 2 * Math.atan((steady - away / steady) / (1 - away));
}

/** After this many wheelbases on the exit straight nothing is left of the turn. */
const SETTLED_WHEELBASES = 20;
/** Halvings of at most some hundred metres: the peak's place to under 0.1 mm, its height far better. */
const HALVINGS = 24;

/**
 * Tail swing beyond the body's line with the front axle led along straight, arc of radius `arcRadiusM`, straight:
 * the gentle way round, metres. The larger of body corner and rack corner. NaN for an arc no wider than the wheelbase.
 * @param turnRad how far the path turns
 */
export function frontAxleSwingM(vehicle: SwingVehicle, arcRadiusM: number, turnRad: number): number {
  if (!(arcRadiusM > vehicle.wheelbaseM)) return Number.NaN;
  let most = Number.NEGATIVE_INFINITY;
  for (const { behindM, halfWidthM } of tailsOf(vehicle)) {
    const beyond = halfWidthM - vehicle.widthM / 2;
    most = Math.max(
      most,
      beyond + peakOfCorner(vehicle.wheelbaseM, arcRadiusM, turnRad, behindM, halfWidthM),
    );
  }
  return most;
}

/**
 * Most of d(s) = (L + b)·sin θ − w(1 − cos θ) − y, y the front axle's way to the inside. It rises from nought to one
 * peak and falls; its slope, with θ′ = sin α / L and y′ = sin ψ, is halved down to where it changes sign.
 */
function peakOfCorner(
  wheelbaseM: number,
  radiusM: number,
  turnRad: number,
  behindM: number,
  wM: number,
): number {
  const arcM = radiusM * turnRad;
  const steerAtEnd = steerOnArc(wheelbaseM, radiusM, arcM);
  const steerAt = (travelM: number): number =>
    travelM <= arcM
      ? steerOnArc(wheelbaseM, radiusM, travelM)
      : steerOnStraight(wheelbaseM, steerAtEnd, travelM - arcM);
  let lowM = 0;
  let highM = arcM + SETTLED_WHEELBASES * wheelbaseM;
  for (let i = 0; i < HALVINGS; i++) {
    const midM = (lowM + highM) / 2;
    const steer = steerAt(midM);
    const path = Math.min(midM / radiusM, turnRad);
    const theta = path - steer;
    const slope =
      (((wheelbaseM + behindM) * Math.cos(theta) - wM * Math.sin(theta)) * Math.sin(steer)) / wheelbaseM -
      Math.sin(path);
    if (slope > 0) lowM = midM;
    else highM = midM;
  }
  const path = Math.min(lowM / radiusM, turnRad);
  const theta = path - steerAt(lowM);
  const insideM = radiusM * (1 - Math.cos(path)) + Math.max(0, lowM - arcM) * Math.sin(turnRad);
  return (wheelbaseM + behindM) * Math.sin(theta) - wM * (1 - Math.cos(theta)) - insideM;
}
