import type { Question } from '../search/question.ts';
import { askJudged } from '../search/search-judged.ts';
import { type LaidLegs, layLegs, type PlanStop } from './lay-legs.ts';

/** The least-cost way through all places, on roads that are guessed at. */
export function layJudged(stops: readonly PlanStop[], question: Question): LaidLegs {
  return askJudged(
    question.field.costs,
    () => layLegs(stops, question),
    ({ parts }) => parts?.map(({ directed }) => directed),
  );
}
