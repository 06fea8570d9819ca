import { itemAt, lastOrZero } from '../../lists.ts';
import type { Detour } from '../along/splice.ts';
import type { Overlay } from '../search/overlay.ts';
import type { Found, Nothing, Question, Source, Target, Terms } from '../search/question.ts';
import { searchJudged } from '../search/search-judged.ts';
import type { Trip } from './trip.ts';

/** Where a way may leave the drive and meet it again, and what it is to pass. Metres along the drive. */
export interface Stretch {
  readonly lowM: number;
  readonly fromM: number;
  readonly toM: number;
  readonly highM: number;
}

export interface FoundDetour extends Detour {
  /** of the whole trip, by the prices */
  readonly costTenths: number;
  readonly gives: number;
}

/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;
/** Among ways so little dearer the one is taken that keeps most of the drive. Tenths of seconds. */
const SLACK_TENTHS = 200;

/** The search past a stretch of a drive: every earlier place is a source, every later one a target. */
export function questionPast(trip: Trip, stretch: Stretch, terms: Terms, overlay: Overlay): StepQuestion {
  const { steps, costs, field } = trip;
  const total = lastOrZero(costs.endTenths);
  const sources: StepSource[] = [];
  const targets: StepTarget[] = [];
  for (const [step, { directed, fromM, toM, fromTail, toHead }] of steps.entries()) {
    if (toHead && fromM >= stretch.lowM - SAME_PLACE_M && toM <= stretch.fromM + SAME_PLACE_M)
      sources.push({
        step,
        state: directed,
        layer: costs.layer[step]!,
        costTenths: costs.endTenths[step]!,
        timeTenths: costs.endTime[step]!,
      });
    if (fromTail && fromM >= stretch.toM - SAME_PLACE_M && toM <= stretch.highM + SAME_PLACE_M)
      targets.push({
        step,
        state: directed,
        layers: itemAt(costs.onward, step),
        restTenths: total - costs.beginTenths[step]!,
      });
  }
  const lost = (source: number, target: number) =>
    itemAt(steps, itemAt(targets, target).step).fromM - itemAt(steps, itemAt(sources, source).step).toM;
  const slack = { tenths: SLACK_TENTHS, lost };
  const { lookUp } = trip.input.check;
  return { field, terms, overlay, sources, targets, slack, leftTenths: trip.leftTenths, lookUp };
}

/**
 * The same search for the way that keeps most of the drive: what it drops of the drive counts as what it takes itself, and
 * where the drive goes on from there does not.
 */
export function questionNear(trip: Trip, stretch: Stretch, terms: Terms, overlay: Overlay): StepQuestion {
  const { slack: _, leftTenths: __, ...past } = questionPast(trip, stretch, terms, overlay);
  const lastLeft = past.sources.reduce((most, { costTenths }) => Math.max(most, costTenths), 0);
  const firstMet = past.targets.reduce((most, { restTenths }) => Math.max(most, restTenths), 0);
  return {
    ...past,
    sources: past.sources.map((source) => ({ ...source, costTenths: lastLeft - source.costTenths })),
    targets: past.targets.map((target) => ({ ...target, restTenths: firstMet - target.restTenths })),
  };
}

interface StepSource extends Source {
  readonly step: number;
}
interface StepTarget extends Target {
  readonly step: number;
}
export interface StepQuestion extends Question {
  readonly sources: readonly StepSource[];
  readonly targets: readonly StepTarget[];
}

/** The best way past a stretch, or what was seen in vain. */
export function findDetour(trip: Trip, question: StepQuestion): FoundDetour | Nothing {
  const found = searchJudged(question);
  return found.states === undefined ? found : detourOf(trip, question, found);
}

/** The way without what it still shares with the drive at both ends. */
function detourOf({ steps, field }: Trip, { sources, targets }: StepQuestion, found: Found): FoundDetour {
  const { edgeOf, lengthM } = field.costs.graph;
  const edges = found.states.map((state) => edgeOf[state]!);
  let first = itemAt(sources, found.source).step;
  let last = itemAt(targets, found.target).step;
  let [from, to] = [1, edges.length - 1];
  while (from < to && steps[first + 1]?.directed === edges[from] && steps[first + 1]?.goesOn === true) {
    first++;
    from++;
  }
  while (to > from && steps[last - 1]?.directed === edges[to - 1] && steps[last]?.goesOn === true) {
    last--;
    to--;
  }
  return {
    fromM: itemAt(steps, first).toM,
    toM: itemAt(steps, last).fromM,
    parts: edges.slice(from, to).map((directed) => ({ directed, fromM: 0, toM: lengthM[directed >> 1]! })),
    costTenths: found.costTenths,
    gives: found.gives,
  };
}
