import { largest } from '../lists.ts';
import type { SwingVehicle } from './swing-vehicle.ts';

/** What of a vehicle may stick out: its body, or the rack behind it. */
export type Box = 'body' | 'rack';

/** A rectangle of the vehicle in its own frame: x from the rear axle forward, the middle line in its middle. Metres. */
export interface OutlineBox {
  readonly what: Box;
  readonly backM: number;
  readonly frontM: number;
  readonly halfWidthM: number;
}

/** A corner of the outline, taken on whichever side is asked for. Metres ahead of the rear axle, from the middle line. */
export interface OutlineCorner {
  readonly what: Box;
  readonly aheadM: number;
  readonly halfWidthM: number;
}

/** The body first, then the rack where one is fitted. */
export function boxesOf(vehicle: SwingVehicle): readonly OutlineBox[] {
  const body: OutlineBox = {
    what: 'body',
    backM: -vehicle.rearOverhangM,
    frontM: vehicle.wheelbaseM + vehicle.frontOverhangM,
    halfWidthM: vehicle.widthM / 2,
  };
  if (!vehicle.rack) return [body];
  const { lengthM, widthM } = vehicle.rack;
  return [body, { what: 'rack', backM: body.backM - lengthM, frontM: body.backM, halfWidthM: widthM / 2 }];
}

/** The nose's corners. */
export function noseOf(vehicle: SwingVehicle): OutlineCorner {
  return {
    what: 'body',
    aheadM: vehicle.wheelbaseM + vehicle.frontOverhangM,
    halfWidthM: vehicle.widthM / 2,
  };
}

/** The corners of the tail, outermost on a turn: the body's and, with a rack, the rack's. */
export function tailsOf(vehicle: SwingVehicle): readonly OutlineCorner[] {
  return boxesOf(vehicle).map(({ what, backM, halfWidthM }) => ({ what, aheadM: backM, halfWidthM }));
}

/** The corners that swing out: of the tail, running backwards of the nose. */
export function swingingCorners(
  vehicle: SwingVehicle,
  { reversing }: { readonly reversing: boolean },
): readonly OutlineCorner[] {
  return reversing ? [noseOf(vehicle)] : tailsOf(vehicle);
}

/** Half of the widest part, body or rack. Metres. */
export function widestHalfM(vehicle: SwingVehicle): number {
  return largest(boxesOf(vehicle).map(({ halfWidthM }) => halfWidthM));
}

/** No point of the vehicle is farther than this from the rear axle's middle. Metres. */
export function reachM(vehicle: SwingVehicle): number {
  return largest(
    boxesOf(vehicle).flatMap(({ backM, frontM, halfWidthM }) => [
      Math.hypot(backM, halfWidthM),
      Math.hypot(frontM, halfWidthM),
    ]),
  );
}
