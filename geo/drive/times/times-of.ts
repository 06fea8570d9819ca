import { given } from '../../given.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Drive } from '../drive.ts';
import type { SpeedVehicle } from './speed-band.ts';
import { type Timetable, timetable } from './timetable.ts';

interface Kept {
  readonly roads: Roads;
  readonly byVehicle: Map<string, Timetable>;
}

const kept = new WeakMap<Drive, Kept>();

/** A fleet, and a few settings tried out. */
const MOST_KEPT = 64;

/** The timetable of a drive for one vehicle and stand-in country, worked out once: a grid of checks asks again. */
export function timesOf(drive: Drive, roads: Roads, vehicle: SpeedVehicle, country?: string): Timetable {
  let known = kept.get(drive);
  if (known?.roads !== roads) {
    known = { roads, byVehicle: new Map() };
    kept.set(drive, known);
  }
  const { grossKg, unladenKg, runningOrder } = vehicle;
  const key = JSON.stringify([grossKg, unladenKg, runningOrder, country]);
  let times = known.byVehicle.get(key);
  if (times === undefined) {
    times = timetable(drive, roads, { vehicle, ...given({ country }) });
    if (known.byVehicle.size >= MOST_KEPT) known.byVehicle.clear();
    known.byVehicle.set(key, times);
  }
  return times;
}
