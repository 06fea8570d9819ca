import { largest, smallest } from '../../lists.ts';
import { noseOf, tailsOf, widestHalfM } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Fit } from './fit-corner.ts';

/** A roundabout, mini-roundabout or turning place. Metres. */
interface Circle {
  readonly vehicle: SwingVehicle;
  /** outer diameter, kerb to kerb */
  readonly circleM: number;
  readonly clearanceM: number;
}

/**
 * Largest steady radius with every corner inside the circle: for the front corner R = √((D/2 − m)² − (L + front
 * overhang)²) − W/2. An island in the middle does not count; a drawn ring of known width is a bend (`fitBend`).
 */
export function fitCircle({ vehicle, circleM, clearanceM }: Circle): Fit {
  return floored(vehicle, 'own lane', radiusInsideM(vehicle, circleM / 2 - clearanceM));
}

/** A hairpin, bend or ring whose centre line is a circle. Metres. */
export interface Bend {
  readonly vehicle: SwingVehicle;
  readonly centreRadiusM: number;
  /** kerb to kerb */
  readonly widthM: number;
  /** our lane, on a road with two: at the inside of the bend or the outside */
  readonly ownLane?: { readonly widthM: number; readonly at: 'inside' | 'outside' };
  readonly clearanceM: number;
}

/** Largest steady radius round a bend, in its own lane if it can, else on the whole road; and the road's width needed. */
export function fitBend(bend: Bend): Fit & { readonly widthNeededM: number } {
  const { vehicle, centreRadiusM, widthM, ownLane, clearanceM } = bend;
  const widthNeededM = bendWidthNeededM(vehicle, centreRadiusM, clearanceM);
  const insideM = centreRadiusM - widthM / 2;
  const outsideM = centreRadiusM + widthM / 2;
  const lane = ownLane ?? { widthM, at: 'inside' };
  const rings = [
    lane.at === 'inside'
      ? (['own lane', insideM, insideM + lane.widthM] as const)
      : (['own lane', outsideM - lane.widthM, outsideM] as const),
    ['whole road', insideM, outsideM] as const,
  ];
  for (const [room, fromM, toM] of rings) {
    const radiusM = radiusInsideM(vehicle, toM - clearanceM);
    const innerM = radiusM - widestHalfM(vehicle);
    if (radiusM >= vehicle.lock.rearAxleRadiusM && innerM >= fromM + clearanceM)
      return { room, rearAxleRadiusM: radiusM, widthNeededM };
  }
  return { room: 'back up', rearAxleRadiusM: vehicle.lock.rearAxleRadiusM, widthNeededM };
}

/**
 * Least road width, kerb to kerb, for a bend of this centre-line radius. Best is the radius at which the outermost corner
 * is as far outside the centre line as the body's side is inside it: with K = 2c + W, R + W/2 = (K² − n²)/2K for
 * the front corner; a vehicle that cannot turn so tightly goes at full lock and the outside decides.
 */
export function bendWidthNeededM(vehicle: SwingVehicle, centreRadiusM: number, clearanceM: number): number {
  const insideHalfM = widestHalfM(vehicle);
  const evenM = smallest(
    cornersOf(vehicle).map(({ reachM, halfWidthM }) => {
      const k = 2 * centreRadiusM + insideHalfM + halfWidthM;
      return (k * k - reachM * reachM) / (2 * k) - halfWidthM;
    }),
  );
  const radiusM = Math.max(evenM, vehicle.lock.rearAxleRadiusM);
  const outermostM = largest(
    cornersOf(vehicle).map(({ reachM, halfWidthM }) => Math.hypot(radiusM + halfWidthM, reachM)),
  );
  const besideM = Math.max(outermostM - centreRadiusM, centreRadiusM - (radiusM - insideHalfM));
  return 2 * (besideM + clearanceM);
}

function floored(vehicle: SwingVehicle, room: Fit['room'], radiusM: number): Fit {
  const leastM = vehicle.lock.rearAxleRadiusM;
  return radiusM >= leastM
    ? { room, rearAxleRadiusM: radiusM }
    : { room: 'back up', rearAxleRadiusM: leastM };
}

/** Largest radius with front corner and tail within a circle; NaN when the vehicle is longer than that. */
function radiusInsideM(vehicle: SwingVehicle, limitM: number): number {
  if (!(limitM > 0)) return Number.NaN;
  return smallest(
    cornersOf(vehicle).map(
      ({ reachM, halfWidthM }) => Math.sqrt(limitM * limitM - reachM * reachM) - halfWidthM,
    ),
  );
}

/** The corners that may be outermost on a circle: front, tail, rack; how far from the rear axle and the middle line. */
function cornersOf(vehicle: SwingVehicle): { readonly reachM: number; readonly halfWidthM: number }[] {
  return [noseOf(vehicle), ...tailsOf(vehicle)].map(({ aheadM, halfWidthM }) => ({
    reachM: Math.abs(aheadM),
    halfWidthM,
  }));
}
