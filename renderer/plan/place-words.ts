import { clip } from '../../geo/units/text.ts';
import type { PlanPlace } from '../state/plan.ts';

/** A place by its name, else by its coordinates. */
export function namePlanPlace({ name, lat, lon }: Pick<PlanPlace, 'name' | 'lat' | 'lon'>): string {
  return name === undefined ? `${lat.toFixed(5)}, ${lon.toFixed(5)}` : clip(name, 60);
}
