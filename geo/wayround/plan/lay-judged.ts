import type { Question } from '../search/question.ts';
import { askJudged } from '../search/search-judged.ts';
import { type LaidLegs, layLegs } from './lay-legs.ts';
import type { PlanStop } from './leg-parts.ts';

/** The least-cost way through all places, on roads that are guessed at. */
export function layJudged(stops: readonly PlanStop[], question: Question): LaidLegs {
  return askJudged(
    question.field.costs,
    () => layLegs(stops, question),
    ({ parts }) => parts?.map(({ directed }) => directed),
  );
}
