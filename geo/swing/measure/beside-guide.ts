import { besidePath, type LaidPath } from '../motion/beside-path.ts';
import type { Motion } from '../motion/motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** A motion along the path it was driven on; which way the vehicle faces on it: 1 along it, −1 backwards. */
export interface Along extends LaidPath {
  readonly motion: Motion;
  readonly facing: 1 | -1;
}

/** Beyond the guide path shifted by half the body width, either side of the path. Metres, nothing below 0. */
export interface Beyond {
  readonly leftM: number;
  readonly rightM: number;
}

/** How far some points, on both sides of the vehicle, come out beyond the band of the body's width along the path. */
export function beyondBand(
  { widthM }: SwingVehicle,
  along: Along,
  points: readonly { readonly aheadM: number; readonly halfWidthM: number }[],
): Beyond {
  const mostOn = (sign: 1 | -1): number => {
    let mostM = widthM / 2;
    // backwards, the vehicle's left is on the path's right
    for (const { aheadM, halfWidthM } of points)
      mostM = Math.max(mostM, mostBesideM(along, sign, aheadM, sign * along.facing * halfWidthM));
    return mostM - widthM / 2;
  };
  return { leftM: mostOn(1), rightM: mostOn(-1) };
}

/** Greatest distance of the rear-axle centre from the path, either side. Metres. */
export function rearAxleOffM(along: Along): number {
  return Math.max(mostBesideM(along, 1, 0, 0), mostBesideM(along, -1, 0, 0));
}

/** The farthest that one point of the vehicle ran to one side of the path (1 left, −1 right). Metres. */
function mostBesideM({ motion, ...path }: Along, sign: 1 | -1, aheadM: number, leftM: number): number {
  const place = besidePath(path);
  const { xM, yM, headingRad } = motion;
  let mostM = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < headingRad.length; index++) {
    const cos = Math.cos(headingRad[index]!);
    const sin = Math.sin(headingRad[index]!);
    const found = place(xM[index]! + aheadM * cos - leftM * sin, yM[index]! + aheadM * sin + leftM * cos);
    mostM = Math.max(mostM, sign * found.leftM);
  }
  return mostM;
}
