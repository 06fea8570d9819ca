import { clip } from '../geo/units/text.ts';
import { messageOf } from './services/files/system-error.ts';
import { isProgramReplaced, PROGRAM_REPLACED } from './services/program-replaced.ts';

/** What went wrong inside the program as one sentence, with what whoever mends it needs: the error and where it arose. */
export function sayThrown(thrown: unknown): string {
  if (isProgramReplaced(thrown)) return PROGRAM_REPLACED.error.message;
  if (!(thrown instanceof Error)) return `${SAID} (${clip(String(thrown))}). ${TODO}`;
  const at = /\n\s+at (?:.*[(/\\])?([\w.-]+:\d+):\d+\)?/u.exec(thrown.stack ?? '')?.[1];
  const what = sayWhat(thrown);
  return `${SAID} (${at === undefined ? what : `${what}, at ${at}`}). ${TODO}`;
}

/** A refusal of the system in words, with what it is about; a fault of ours by its name. */
function sayWhat(thrown: Error): string {
  if (!('errno' in thrown)) return `${thrown.name}: ${clip(thrown.message)}`;
  const path = 'path' in thrown && typeof thrown.path === 'string' ? `: ${clip(thrown.path)}` : '';
  return `${messageOf(thrown)}${path}`;
}

const SAID = 'Something went wrong inside the program, and it could not finish';
const TODO = 'Try again; if it happens again, please tell its makers, with this line.';
