import { ROAD_CLASS } from '../../graph/road-class.ts';
import type { StepCosts } from '../../graph/step-costs.ts';

/**
 * The figures of one match. "Metres" below are turned into log-likelihood by dividing by betaM where they stand
 * for extra way driven, and by `metres² / (2 sigmaM²)` where they stand for distance from the road.
 * Values: Newson & Krumm 2009, section 4, and measurement on their field test.
 */
export interface MatchSettings {
  /** standard deviation of a position's distance from its road */
  readonly sigmaM: number;
  /** scale of |way driven - straight distance| between two positions */
  readonly betaM: number;
  /** the same between positions farther apart than farM */
  readonly farBetaM: number;
  /** roads farther from a position are not looked at */
  readonly radiusM: number;
  /** a direction against a one-way must be nearer by this; the other carriageway is usually farther away */
  readonly wrongWayM: number;
  /** positions nearer than this to the last one kept are left out */
  readonly thinM: number;
  /** a step back along the same road up to this is jitter, not a turn */
  readonly jitterM: number;
  /** from here on a position is likelier to be off the map than on that road */
  readonly offRoadM: number;
  /** way that may be driven beyond the straight distance before a break in the map is likelier */
  readonly detourM: number;
  /** the same for every metre of straight distance beyond sparseM */
  readonly detourPerM: number;
  /** of the states of a far position those this much dearer than the first found are not looked for */
  readonly slackM: number;
  /** positions farther apart than this leave the way between them open */
  readonly sparseM: number;
  /** positions farther apart are joined by one search over all states at once */
  readonly farM: number;
  /** true when a receiver recorded the positions, whose slips may be left out */
  readonly recorded: boolean;
  /** true when the lines between positions are drawn, too, and tell where the road runs */
  readonly drawn: boolean;
  /** true when only the roads tell how to get from one position to the next: the quickest way is taken, as planners do */
  readonly quickest: boolean;
  /** what guides the search between positions close by, and between those farther apart than farM */
  readonly steps: StepCosts;
  readonly farSteps: StepCosts;
  /** called at every position; what it throws ends the match */
  readonly lookUp?: () => void;
}

/** Distances that a way of this class must be nearer by to be preferred, by ROAD_CLASS. Metres. */
export const CLASS_HANDICAP_M: readonly number[] = perClass({
  main: 0,
  minor: 0,
  service: 3,
  track: 3,
  path: 12,
  closed: 12,
  ferry: 0,
});

/**
 * A drawn line says where it runs: signs only settle what it leaves open, as at a junction where several roads lie
 * beneath one position. They never lead the match off the road that was drawn.
 */
const ALONG_LINE: StepCosts = {
  turnBackM: 20,
  forbiddenTurnM: 1,
  enterWrongWayM: 3,
  wrongWayPerM: 0.02,
  classPerM: perClass({ main: 0, minor: 0, service: 0.02, track: 0.02, path: 0.3, closed: 0.05, ferry: 0 }),
};

/** Between far vertices a line may cut bends, so it leaves more open. */
const ALONG_COARSE_LINE: StepCosts = { ...ALONG_LINE, enterWrongWayM: 10, wrongWayPerM: 0.1 };

/** A receiver errs, and most drivers obey. */
const ALONG_RECORDING: StepCosts = {
  ...ALONG_LINE,
  forbiddenTurnM: 40,
  enterWrongWayM: 60,
  wrongWayPerM: 0.3,
};

/**
 * Between the points of a sparse route only the roads themselves tell. The quickest legal way is sought, told in metres
 * at full speed (way-prices.ts): what nobody plans costs minutes.
 */
const BETWEEN_VIA_POINTS: StepCosts = {
  turnBackM: 2000,
  forbiddenTurnM: 5000,
  enterWrongWayM: 3000,
  wrongWayPerM: 20,
  classPerM: perClass({ main: 0, minor: 0.1, service: 0.6, track: 1, path: 50, closed: 50, ferry: 0 }),
};

const NOISY_M = 7.5;
/** Points of a sparse route lie on their road or were set by hand; no more is credited than two junctions lie apart. */
const LEAST_VIA_M = 2;
const MOST_VIA_M = 10;

const PLANNED: MatchSettings = {
  sigmaM: 10,
  betaM: 3,
  farBetaM: 3,
  radiusM: 50,
  wrongWayM: 12,
  thinM: 3,
  jitterM: 10,
  offRoadM: 30,
  detourM: 100,
  detourPerM: 0.5,
  slackM: 400,
  sparseM: 200,
  farM: 60,
  recorded: false,
  drawn: true,
  quickest: false,
  steps: ALONG_LINE,
  farSteps: ALONG_COARSE_LINE,
};

/** A line drawn on this very map: which of two carriageways is meant can be seen. */
export function sameMapTrack(): MatchSettings {
  return { ...PLANNED, ...reachOf(5), wrongWayM: 2 };
}

/** A line as a planner draws it on some other map: its vertices, or some of them, and no times. */
export function plannedTrack(sigmaM: number): MatchSettings {
  return { ...PLANNED, ...reachOf(sigmaM) };
}

/** A route of far-apart points about `noiseM` from their roads, which nobody drew along the roads between them. */
export function sparseRoute(noiseM: number): MatchSettings {
  return {
    ...PLANNED,
    sigmaM: Math.min(MOST_VIA_M, Math.max(LEAST_VIA_M, noiseM)),
    // some seconds more are no reason to leave the road a point lies on
    farBetaM: 100,
    // slow roads and turns make metres at full speed many: a break is thought of only where no way leads there
    detourM: 3000,
    detourPerM: 15,
    slackM: 4000,
    farM: PLANNED.sparseM,
    drawn: false,
    quickest: true,
    steps: BETWEEN_VIA_POINTS,
    farSteps: BETWEEN_VIA_POINTS,
  };
}

/** A recorded track whose positions lie about `sigmaM` from their roads. */
export function recordedTrack(sigmaM: number): MatchSettings {
  const betaM = Math.max(PLANNED.betaM, 0.8 * sigmaM - 2);
  return {
    ...PLANNED,
    ...reachOf(sigmaM),
    betaM,
    farBetaM: betaM,
    // a noisy recording says more when it is thinned to where noise is small against the way driven
    thinM: sigmaM > NOISY_M ? 6 * sigmaM : 2 * sigmaM,
    jitterM: 5 * sigmaM,
    detourM: 400,
    detourPerM: 3,
    slackM: 1600,
    farM: PLANNED.sparseM,
    recorded: true,
    wrongWayM: 15,
    steps: ALONG_RECORDING,
    farSteps: ALONG_RECORDING,
    drawn: false,
  };
}

function reachOf(sigmaM: number): Pick<MatchSettings, 'sigmaM' | 'radiusM' | 'offRoadM'> {
  return { sigmaM, radiusM: Math.max(50, 4 * sigmaM), offRoadM: Math.max(30, 3 * sigmaM) };
}

function perClass(values: Readonly<Record<keyof typeof ROAD_CLASS, number>>): readonly number[] {
  const list: number[] = [];
  list[ROAD_CLASS.main] = values.main;
  list[ROAD_CLASS.minor] = values.minor;
  list[ROAD_CLASS.service] = values.service;
  list[ROAD_CLASS.track] = values.track;
  list[ROAD_CLASS.path] = values.path;
  list[ROAD_CLASS.closed] = values.closed;
  list[ROAD_CLASS.ferry] = values.ferry;
  return list;
}
