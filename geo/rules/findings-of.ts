import type { Finding } from '../report/report.ts';
import { type Draft, makeFindings } from './finding.ts';
import { withNotes } from './noted/with-notes.ts';
import type { RuleInput } from './rule.ts';

/** The findings of a drive from what all rules said of it, the firm's own notes taken in. */
export function findingsOf(input: RuleInput, drafts: readonly Draft[]): Finding[] {
  return makeFindings(input, withNotes(input, drafts));
}
