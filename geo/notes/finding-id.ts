import { SUBJECTS, type Subject } from '../report/kinds.ts';

/** What a finding is about and where, as its id tells it to whoever types one. */
export interface FindingId {
  readonly subject: Subject;
  /** whether it is that of a guessed stretch */
  readonly isGuessed: boolean;
}

const OBJECT = String.raw`[wnr]\d+[fb]?`;
/** subject, then what is driven or met there (`w12f,n3`), or the word that tells it apart (`off:54.1,9.2`) */
const FORM = new RegExp(`^([a-z]+):(?:${OBJECT}(?:,${OBJECT})*(?:[:#]\\S.*)?|(?![wnr]\\d)[A-Za-z].*)$`, 'u');
const GUESSED = /^map:guessed(?:[:#]|$)/;

/** Reads the id of a finding as it was typed; undefined where none has that form or begins with that word. */
export function readFindingId(typed: string): FindingId | undefined {
  const word = FORM.exec(typed)?.[1];
  const subject = SUBJECTS.find((each) => each === word);
  return subject && { subject, isGuessed: GUESSED.test(typed) };
}
