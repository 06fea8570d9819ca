import type { ComponentChildren } from 'preact';
import { toDeg } from '../../../geo/earth/angles.ts';
import { frontWheelRad } from '../../../geo/swing/circle.ts';
import type { Pose } from '../../../geo/swing/motion/motion.ts';
import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';
import { TYRE_PATH } from './tyre.ts';

/** The vehicle where it stands, its front wheels as they are turned. In metres; the children are its plan. */
export function MovingVehicle({
  vehicle,
  pose,
  steerRad,
  children,
}: {
  vehicle: SwingVehicle;
  pose: Pose;
  steerRad: number;
  children: ComponentChildren;
}) {
  return (
    <g class="swing-vehicle" transform={placeOf(pose)}>
      {children}
      {[1, -1].map((side) => {
        const leftM = (side * vehicle.trackM) / 2;
        const turned = toDeg(frontWheelRad(vehicle, steerRad, leftM));
        return (
          <path
            key={side}
            class="swing-wheel"
            transform={`translate(${vehicle.wheelbaseM} ${leftM}) rotate(${turned.toFixed(2)})`}
            d={TYRE_PATH}
          />
        );
      })}
    </g>
  );
}

/** The vehicle's frame on the ground, for a transform. */
export function placeOf({ xM, yM, headingRad }: Pose): string {
  return `translate(${xM.toFixed(4)} ${yM.toFixed(4)}) rotate(${toDeg(headingRad).toFixed(3)})`;
}
