import { meetsBorder } from '../none/cut.ts';
import type { Question } from '../search/question.ts';
import { reachedFrom } from './snap.ts';

/**
 * Whether a vehicle that ends its drive on a directed edge has to turn round to leave again, and no place is mapped where
 * it could: the roads ahead lead nowhere, and not back. A main road that ends in nothing is where the map ends.
 */
export function mustTurnToLeave(base: Question, endsOn: number): boolean {
  const asked = { ...base, terms: { ...base.terms, ferries: true } };
  const reached = reachedFrom(asked, endsOn);
  return reached !== undefined && !reached.has(endsOn ^ 1) && !meetsBorder(base.field, reached, 'out');
}
