import { largest } from '../../../lists.ts';
import { radiusOfShareM, swingOfCornerM } from '../../circle.ts';
import { swingingCorners } from '../../outline.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Scene } from '../scene/scene.ts';

/** The vehicle with its full lock as tight as it may be, and as wide; itself where the lock is no range. */
export function atTightest(vehicle: SwingVehicle): SwingVehicle {
  return withLock(vehicle, vehicle.lock.lowM);
}
export function atWidest(vehicle: SwingVehicle): SwingVehicle {
  return withLock(vehicle, vehicle.lock.highM);
}

function withLock(vehicle: SwingVehicle, rearAxleRadiusM: number): SwingVehicle {
  return { ...vehicle, lock: { ...vehicle.lock, rearAxleRadiusM } };
}

/** How much less and more an end may swing out, by how wide and how tight full lock may be. Metres, nothing below 0. */
export function swingDoubtOf({ vehicle, settings, reversing }: Scene): {
  readonly lessM: number;
  readonly moreM: number;
} {
  const share = settings?.lockShare ?? 1;
  const swing = (of: SwingVehicle): number =>
    largest(
      swingingCorners(of, { reversing }).map((corner) =>
        swingOfCornerM(of, radiusOfShareM(of, share), corner),
      ),
    );
  const hereM = swing(vehicle);
  return {
    lessM: Math.max(0, hereM - swing(atWidest(vehicle))),
    moreM: Math.max(0, swing(atTightest(vehicle)) - hereM),
  };
}
