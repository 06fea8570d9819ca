import type { SwingVehicle } from '../../swing-vehicle.ts';

/** A rectangle of the vehicle in its own frame: x from the rear axle forward, the middle line in its middle. Metres. */
export interface Box {
  readonly what: 'body' | 'rack';
  readonly backM: number;
  readonly frontM: number;
  readonly halfWidthM: number;
}

/** The body, and the rack where one is fitted. */
export function boxesOf(vehicle: SwingVehicle): readonly Box[] {
  const body: Box = {
    what: 'body',
    backM: -vehicle.rearOverhangM,
    frontM: vehicle.wheelbaseM + vehicle.frontOverhangM,
    halfWidthM: vehicle.widthM / 2,
  };
  if (!vehicle.rack) return [body];
  const { lengthM, widthM } = vehicle.rack;
  return [body, { what: 'rack', backM: body.backM - lengthM, frontM: body.backM, halfWidthM: widthM / 2 }];
}

/** No point of the vehicle is farther than this from the rear axle's middle. Metres. */
export function reachM(vehicle: SwingVehicle): number {
  return Math.max(
    ...boxesOf(vehicle).flatMap(({ backM, frontM, halfWidthM }) => [
      Math.hypot(backM, halfWidthM),
      Math.hypot(frontM, halfWidthM),
    ]),
  );
}
