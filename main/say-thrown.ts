import { clip } from '../geo/units/text.ts';

/** What went wrong inside the program as one sentence, with what whoever mends it needs: the error and where it arose. */
export function sayThrown(thrown: unknown): string {
  if (!(thrown instanceof Error)) return `${SAID} (${clip(String(thrown))}). ${TODO}`;
  const at = /\n\s+at (?:.*[(/\\])?([\w.-]+:\d+):\d+\)?/u.exec(thrown.stack ?? '')?.[1];
  const what = `${thrown.name}: ${clip(thrown.message)}`;
  return `${SAID} (${at === undefined ? what : `${what}, at ${at}`}). ${TODO}`;
}

const SAID = 'Something went wrong inside the program, and it could not finish';
const TODO = 'Try again; if it happens again, please tell its makers, with this line.';
