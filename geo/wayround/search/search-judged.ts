import type { RoadCosts } from '../price/road-costs.ts';
import type { Found, Nothing, Question } from './question.ts';
import { searchForward } from './search-forward.ts';

/** Roads guessed at too well this often are judged where they are met from then on. */
const MOST_TRIES = 6;

/**
 * Asks again until every road of the answer has been judged and is what it was guessed to be. A guess is never dearer than
 * what it stands for, so the first such answer is the best. Most roads are what they look like, and most of those that a
 * search meets are never asked about. Where no road is guessed at, it asks once.
 * @param driven directed edges of an answer; undefined where there is none
 */
export function askJudged<T>(
  costs: RoadCosts,
  ask: () => T,
  driven: (answer: T) => readonly number[] | undefined,
): T {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const answer = ask();
    let changed = false;
    for (const directed of driven(answer) ?? []) changed = costs.settle(directed) || changed;
    if (!changed) return answer;
  }
  costs.guessNoMore();
  return ask();
}

/** `searchForward` on roads that are guessed at. */
export function searchJudged(question: Question): Found | Nothing {
  const { costs } = question.field;
  return askJudged(
    costs,
    () => searchForward(question),
    ({ states }) => states?.map((state) => costs.graph.edgeOf[state]!),
  );
}
