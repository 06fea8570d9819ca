import type { CheckInput } from '../../check.ts';
import type { Drive } from '../../drive/drive.ts';
import type { Route } from '../../drive/gpx/route.ts';
import type { Place } from '../../earth/sphere.ts';
import type { DriveReport } from '../../report/report.ts';
import type { Prefer } from '../price/prices.ts';

/** A place a plan leads through. */
export interface PlanPlace extends Place {
  /** the vehicle stops there, so that roads for those who go there are open to it; first and last always do */
  readonly stop?: boolean;
}

export interface PlanInput
  extends Pick<
    CheckInput,
    | 'roads'
    | 'card'
    | 'load'
    | 'margins'
    | 'units'
    | 'country'
    | 'day'
    | 'program'
    | 'made'
    | 'lookUp'
    | 'notes'
    | 'localNotes'
  > {
  /** two or more, in the order they are driven */
  readonly places: readonly PlanPlace[];
  readonly prefer?: Prefer;
  /** wall time, 2027-06-12T09:30, where the first place is */
  readonly leave?: string;
  /** whether it must turn round at the end to leave again, where roads farther off than these have told */
  readonly turnsToLeave?: boolean;
  /** name of the drive and of its file */
  readonly name?: string;
}

export interface Planned {
  /** dense: matched again it follows the same roads */
  readonly route: Route;
  readonly drive: Drive;
  readonly report: DriveReport;
  /** where each place was put on the roads, and how far from it that is */
  readonly places: readonly {
    readonly at: Place;
    readonly awayM: number;
    /** metres along the drive */
    readonly alongM: number;
  }[];
  /** the places between where the vehicle has business, as its check was told of them */
  readonly stops: NonNullable<CheckInput['stops']>;
  /** what there is to say of where places were put; in the report's notes as well */
  readonly say: readonly string[];
  /** of that, what the drive itself does not tell when it is checked again */
  readonly ofPlaces: readonly string[];
  /** what the search held it to cost, tenths of seconds */
  readonly costTenths: number;
  /** searches it took: one where the check had nothing to say that the search did not know */
  readonly searches: number;
}

/** A drive that nothing has checked. */
export interface PlanSketch {
  /** every node passed, both ends included, degrees */
  readonly path: readonly (readonly [lat: number, lon: number])[];
  /** it must turn round at the end to leave again, and no place to do so is mapped */
  readonly turnsToLeave: boolean;
  readonly costTenths: number;
}
