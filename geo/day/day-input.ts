import type { Drive } from '../drive/drive.ts';
import type { Leaving } from '../drive/times/leaving.ts';
import type { Timetable } from '../drive/times/timetable.ts';
import type { Roads } from '../roads/roads.ts';
import type { Units } from '../units/in-units.ts';
import type { FileLine } from './file-heights.ts';
import type { MetStops } from './meet-stops.ts';
import type { DayPlan } from './plan.ts';

/** A day's plan on its drive. */
export interface DayInput {
  readonly plan: DayPlan;
  readonly met: MetStops;
  readonly drive: Drive;
  readonly roads: Roads;
  /** with the stays counted in */
  readonly times: Timetable;
  /** what the advice is told in */
  readonly units: Units;
  readonly leaving?: Leaving | undefined;
  /** the drive as its file draws it */
  readonly line?: FileLine | undefined;
  /** stands in where the place tells none (ISO 3166-1 alpha-2) */
  readonly country?: string | undefined;
}
