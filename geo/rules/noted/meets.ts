import { type Draft, isIdOf } from '../finding.ts';
import { endOf } from '../run.ts';
import type { NoteMet } from './notes-on-drive.ts';

/** Whether a note holds somewhere on what a draft is about. */
export function meets({ run }: NoteMet, draft: Draft): boolean {
  return run[0].fromM <= endOf(draft.run) && endOf(run) >= draft.run[0].fromM;
}

/** Whether a note was made to answer what a draft says there: by id, or by what it is about where the ids are new. */
export function answers(one: NoteMet, draft: Draft): boolean {
  const asked = one.note.answers;
  if (asked === undefined || !meets(one, draft)) return false;
  return isIdOf(draft, asked.finding) || (asked.subject === draft.subject && asked.kind === draft.kind);
}
