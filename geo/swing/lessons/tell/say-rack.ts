import { sizeIn, type Units } from '../../../units/in-units.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';

/** `with its rack of 0.70 m`, `with a rack of 0.70 m tried out`, `without a rack`: what the figures count. */
export function sayRack({ rack }: Pick<SwingVehicle, 'rack'>, units: Units): string {
  if (!rack) return 'without a rack';
  const size = sizeIn(units, rack.lengthM, 'nearest');
  return rack.tryOut ? `with a rack of ${size} tried out` : `with its rack of ${size}`;
}
