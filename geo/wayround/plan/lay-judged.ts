import type { Question } from '../search/question.ts';
import { type LaidLegs, layLegs, type PlanStop } from './lay-legs.ts';

/** Roads guessed at too well this often are judged where they are met from then on. */
const MOST_TRIES = 6;

/**
 * The least-cost way through all places, on roads that are guessed at: those of the way found are judged, and where one
 * is not what it looked like another way is searched for. A guess is never dearer than what it stands for, so the first
 * way that is what it looked like is the best. Most roads are, and most of those met are never asked about.
 */
export function layJudged(stops: readonly PlanStop[], question: Question): LaidLegs {
  const { costs } = question.field;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const laid = layLegs(stops, question);
    if (laid.parts === undefined) return laid;
    let changed = false;
    for (const { directed } of laid.parts) changed = costs.settle(directed) || changed;
    if (!changed) return laid;
  }
  costs.guessNoMore();
  return layLegs(stops, question);
}
