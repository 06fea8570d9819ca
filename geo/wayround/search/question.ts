import type { LocalMoment } from '../../clock/moment.ts';
import type { RoadCosts } from '../price/road-costs.ts';
import type { RuleJudge } from '../price/rule-judge.ts';
import type { Overlay } from './overlay.ts';

/** One vehicle on one map: what every search of one question shares. */
export interface Field {
  readonly costs: RoadCosts;
  readonly rules: RuleJudge;
  /** across the circle the vehicle needs to turn round, metres */
  readonly circleM: number;
}

/** What may be driven. */
export interface Terms {
  /** ferries are taken */
  readonly ferries: boolean;
  /** roads and points with a tight or unknown finding are not */
  readonly doubtFree?: boolean;
  /** limits on sizes and masses give way, each counted; everything else still bars */
  readonly limitsGive?: boolean;
  /** the vehicle turns round anywhere */
  readonly turnAnywhere?: boolean;
  /** the clock at a node so many tenths of seconds after the start of the drive; left out, what hangs on it is open */
  readonly clockAt?: (node: number, timeTenths: number) => LocalMoment | undefined;
}

/** Where a search starts: at the end of a state's edge. */
export interface Source {
  readonly state: number;
  readonly layer: number;
  readonly costTenths: number;
  /** since the start of the drive */
  readonly timeTenths: number;
}

/** Where a search ends: somewhere on a state's edge, `restTenths` after turning into it. */
export interface Target {
  readonly state: number;
  /** by layer: whether the trip may go on from there */
  readonly layers: readonly boolean[];
  readonly restTenths: number;
}

export interface Question {
  readonly field: Field;
  readonly terms: Terms;
  readonly overlay: Overlay;
  readonly sources: readonly Source[];
  readonly targets: readonly Target[];
  /** among answers so little dearer than the best, tenths, the one is taken that loses least; by source and target */
  readonly slack?: { readonly tenths: number; readonly lost: (source: number, target: number) => number };
  /** a lower bound on what is left to the targets from the end of an edge, tenths; 0 everywhere where left out */
  readonly leftTenths?: (node: number) => number;
  /** called now and then; what it throws ends the search */
  readonly lookUp?: (() => void) | undefined;
}

/** A way through the graph: states from the source's to the target's, both included. */
export interface Found {
  readonly states: readonly number[];
  /** index into the question's sources and targets */
  readonly source: number;
  readonly target: number;
  /** the layer that the target's edge is driven in; NO_LAYER where the search does not tell */
  readonly layer: number;
  /** with the source's and the target's own */
  readonly costTenths: number;
  /** limits that would have to give */
  readonly gives: number;
  /** states settled: the work it took */
  readonly settled: number;
}

/** Nothing found: what was reached, so that one may see why. */
export interface Nothing {
  readonly states: undefined;
  /** directed edges */
  readonly reached: readonly number[];
  readonly settled: number;
  /** the search gave up before all was seen */
  readonly gaveUp: boolean;
}
