import { given } from '../../given.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Drive } from '../drive.ts';
import { oncePerDrive } from '../once-per-drive.ts';
import { type SpeedVehicle, speedClassOf } from './speed-band.ts';
import { type Timetable, timetable } from './timetable.ts';

const kept = oncePerDrive(() => new Map<string, Timetable>());

/** Classes of speed a fleet has, and a few settings tried out. */
const MOST_KEPT = 64;

/** The timetable of a drive for one vehicle and stand-in country, worked out once for all vehicles that may go as fast. */
export function timesOf(drive: Drive, roads: Roads, vehicle: SpeedVehicle, country?: string): Timetable {
  const byVehicle = kept(drive, roads);
  const key = `${country} ${speedClassOf(vehicle)}`;
  let times = byVehicle.get(key);
  if (times === undefined) {
    times = timetable(drive, roads, { vehicle, ...given({ country }) });
    if (byVehicle.size >= MOST_KEPT) byVehicle.clear();
    byVehicle.set(key, times);
  }
  return times;
}
