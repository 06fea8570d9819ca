import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';
import { TYRE_LONG_M, TYRE_WIDE_M } from './tyre.ts';

/** From the nose to the back of a van cab. Metres; common practice, no source. */
const CAB_M = 1.85;
const MIRROR_BEHIND_NOSE_M = 0.95;

interface Outline {
  readonly nose: number;
  readonly tail: number;
  readonly half: number;
}

function outlineOf(vehicle: SwingVehicle): Outline {
  return {
    nose: vehicle.wheelbaseM + vehicle.frontOverhangM,
    tail: -vehicle.rearOverhangM,
    half: vehicle.widthM / 2,
  };
}

/** The body as the kinematics have it: a rectangle, and a rack behind it. For a path's `d`, in the vehicle's frame. */
function bodyPath(vehicle: SwingVehicle): string {
  const { nose, tail, half } = outlineOf(vehicle);
  return `M${tail} ${-half}H${nose}V${half}H${tail}Z`;
}

function rackPath(vehicle: SwingVehicle): string {
  if (!vehicle.rack) return '';
  const { tail } = outlineOf(vehicle);
  const { lengthM, widthM } = vehicle.rack;
  const [end, half] = [tail - lengthM, widthM / 2];
  const rail = (share: number) => `M${tail - share * lengthM} ${-half}V${half}`;
  return `M${tail} ${-half}H${end}V${half}H${tail}${rail(0.35)}${rail(0.7)}`;
}

/**
 * The vehicle in plan, drawn in its own frame: origin at the rear axle, x ahead, y left, metres. What turns with the
 * steering is not here: see `FrontWheel`.
 */
export function VehiclePlan({ vehicle, mirrorsM }: { vehicle: SwingVehicle; mirrorsM: number }) {
  const { nose, tail, half } = outlineOf(vehicle);
  const cab = Math.max(tail + 0.5, nose - CAB_M);
  const mirror = Math.max(half, mirrorsM / 2);
  const at = nose - MIRROR_BEHIND_NOSE_M;
  return (
    <>
      {vehicle.rack && <path class="swing-rack" d={rackPath(vehicle)} />}
      <path
        class="swing-mirrors"
        d={`M${at} ${half}l0.14 ${mirror - half}h-0.12M${at} ${-half}l0.14 ${half - mirror}h-0.12`}
      />
      <path class="swing-body" d={bodyPath(vehicle)} />
      <path
        class="swing-glass"
        d={`M${nose - 0.42} ${-half + 0.16}Q${nose - 0.2} 0 ${nose - 0.42} ${half - 0.16}L${nose - 0.95} ${half - 0.28}Q${nose - 0.8} 0 ${nose - 0.95} ${-half + 0.28}Z`}
      />
      <path class="swing-inner" d={`M${cab} ${-half}V${half}`} />
      <path
        class="swing-axle"
        d={`M0 ${-vehicle.trackM / 2}V${vehicle.trackM / 2}M${vehicle.wheelbaseM} ${-vehicle.trackM / 2}V${vehicle.trackM / 2}`}
      />
      {[1, -1].map((side) => (
        <rect
          key={side}
          class="swing-wheel"
          x={-TYRE_LONG_M / 2}
          y={(side * vehicle.trackM) / 2 - TYRE_WIDE_M / 2}
          width={TYRE_LONG_M}
          height={TYRE_WIDE_M}
        />
      ))}
    </>
  );
}
