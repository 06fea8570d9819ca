import type { SubjectRule } from '../rule.ts';
import { cornerDraft } from './corner-draft.ts';
import { cornersOf } from './corners-of.ts';

/** Corners made in the own lane, where the tail leaves it or crosses the kerb's line. */
export const swing: SubjectRule = (input) =>
  cornersOf(input)
    .filter(({ subject }) => subject === 'swing')
    .map((corner) => cornerDraft(input, corner));
