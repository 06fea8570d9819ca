import { type Draft, isIdOf } from '../finding.ts';
import { endOf } from '../run.ts';
import type { NoteMet } from './notes-on-drive.ts';

/** Whether a note holds somewhere on what a draft is about. */
export function meets({ run }: NoteMet, draft: Draft): boolean {
  return run[0].fromM <= endOf(draft.run) && endOf(run) >= draft.run[0].fromM;
}

/** A note met. */
export interface NoteAsked extends NoteMet {
  /** the very finding that it was made to answer is there */
  readonly isNamed?: boolean;
}

/** Looks for what each note was made to answer. */
export function askedOf(met: readonly NoteMet[], drafts: readonly Draft[]): NoteAsked[] {
  return met.map((one) => ({ ...one, isNamed: drafts.some((draft) => names(one, draft)) }));
}

function names(one: NoteMet, draft: Draft): boolean {
  const asked = one.note.answers;
  return asked !== undefined && meets(one, draft) && isIdOf(draft, asked.finding);
}

/** Whether a note was made to answer what a draft says there: by id, or by what it is about where the ids are new. */
export function answers(one: NoteAsked, draft: Draft): boolean {
  if (one.isNamed) return names(one, draft);
  const asked = one.note.answers;
  return asked?.subject === draft.subject && asked.kind === draft.kind && meets(one, draft);
}
