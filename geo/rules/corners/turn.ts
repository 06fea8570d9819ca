import type { SubjectRule } from '../rule.ts';
import { cornerDraft } from './corner-draft.ts';
import { cornersOf } from './corners-of.ts';

/** Corners where room is the matter: the other lane on the exit, the whole road, or backing up. */
export const turn: SubjectRule = (input) =>
  cornersOf(input)
    .filter(({ subject }) => subject === 'turn')
    .map((corner) => cornerDraft(input, corner));
