import type { Drive } from '../drive/drive.ts';
import type { Stay, Timetable } from '../drive/times/timetable.ts';
import { traceDrive } from '../drive/times/trace.ts';
import { smallest } from '../lists.ts';
import type { Roads } from '../roads/roads.ts';
import { type Pass, passesOf } from './passes.ts';
import type { DayStop } from './plan.ts';

/** Where a stop was put, and which pass of it is meant. */
export type StopPlace = Pick<DayStop, 'lat' | 'lon' | 'atM'>;

/** A stop where the drive meets it. */
export interface MetStop<S extends StopPlace = DayStop> {
  readonly stop: S;
  /** metres along the drive */
  readonly atM: number;
}

export interface MetStops<S extends StopPlace = DayStop> {
  /** in driving order */
  readonly stops: readonly MetStop<S>[];
  /** stops that the drive does not pass */
  readonly missed: readonly S[];
}

/** A stop stands on the drive: so far beside it lies another mapping of the same road. Metres. */
export const STOP_BESIDE_M = 60;
/** Passes so much farther off than the nearest are as good. Metres. */
const AS_NEAR_M = 15;

/** The stops of a day on its drive, each at the pass nearest to where it was put. */
export function meetStops<S extends StopPlace = DayStop>(
  { stops }: { readonly stops: readonly S[] },
  drive: Drive,
  roads: Roads,
): MetStops<S> {
  if (stops.length === 0) return { stops: [], missed: [] };
  const trace = traceDrive(drive, roads);
  const met: MetStop<S>[] = [];
  const missed: S[] = [];
  for (const stop of stops) {
    const pass = passMeant(passesOf(trace, stop, STOP_BESIDE_M), stop.atM);
    if (pass === undefined) missed.push(stop);
    else met.push({ stop, atM: pass.atM });
  }
  return { stops: met.sort((a, b) => a.atM - b.atM), missed };
}

function passMeant(passes: readonly Pass[], putM = 0): Pass | undefined {
  const nearestM = smallest(passes.map(({ awayM }) => awayM));
  const good = passes.filter(({ awayM }) => awayM <= nearestM + AS_NEAR_M);
  return good.sort((a, b) => Math.abs(a.atM - putM) - Math.abs(b.atM - putM))[0];
}

/** The timetable with the stays counted in. */
export function withStays(times: Timetable, met: MetStops | undefined): Timetable {
  if (met === undefined || met.stops.length === 0) return times;
  const stays: Stay[] = met.stops.map(({ stop, atM }) => ({ atM, stayS: stop.stayMin * 60 }));
  return { ...times, stays };
}
