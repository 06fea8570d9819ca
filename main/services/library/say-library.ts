import { counted, quote } from '../../../geo/units/text.ts';
import { messageOf } from '../files/system-error.ts';
import type { Found } from './known-records.ts';

/** A file that could not be used. */
export interface Unusable {
  readonly path: string;
  readonly found: Found;
}

/** What of a library could not be used, and what became of it: a sentence each kind. */
export function sayUnusable(folder: string, unusable: readonly Unusable[]): string[] {
  const some = (is: Found['is']) => unusable.filter(({ found }) => found.is === is);
  const [newer, half, foreign, unreadable] = [
    some('newer'),
    some('half'),
    some('foreign'),
    some('unreadable'),
  ];
  const say: string[] = [];
  if (newer.length > 0)
    say.push(
      `${told(newer, folder)} written by a newer Lanegauge. They are left as they are, and what came before them is shown. Use the newer program to see them.`,
    );
  if (half.length > 0)
    say.push(
      `${told(half, folder)} not whole: still on their way from another computer, or damaged. They are left as they are, and what came before them is shown.`,
    );
  if (foreign.length > 0)
    say.push(`${told(foreign, folder)} none of Lanegauge's. They are left as they are.`);
  const [first] = unreadable;
  if (first?.found.is === 'unreadable')
    say.push(`${told(unreadable, folder)} unreadable: ${first.found.say}`);
  return say;
}

function told(unusable: readonly Unusable[], folder: string): string {
  const [first] = unusable;
  const many = unusable.length > 1;
  return `In the library in ${folder} ${counted(unusable.length, 'file')} (${many ? 'the first is ' : ''}${quote(first?.path ?? '', 160)}) ${many ? 'are' : 'is'}`;
}

export function saySlow(folder: string): string {
  return `The library in ${folder} answers slowly. What this computer last saw of it is shown; the rest comes when it has been read.`;
}

export function sayVanished(folder: string): string {
  return `The library is not in ${folder} any more. What this computer last saw of it is shown, and nothing can be changed. Connect its disk again; if it is really gone, make an empty folder there to begin anew.`;
}

/** The same of the sheets that are out. */
export function saySheetsGone(folder: string): string {
  return `The library in ${folder} is not there: these are the sheets as last seen, and none was checked again. Connect its disk, and ask again.`;
}

export function sayEmptied(folder: string): string {
  return `The library in ${folder} is empty, and this computer has seen it filled: its drives, vehicles and notes count no more. If its disk is not connected, connect it; if it is really gone, the first change begins it anew.`;
}

export function sayUnread(folder: string, error: unknown): string {
  return `The library in ${folder} could not be read (${messageOf(error)}). What this computer last saw of it is shown.`;
}

export function sayUnwritten(folder: string, error: unknown): string {
  return `The change was not kept: the library in ${folder} could not be written (${messageOf(error)}). What was there is unchanged. Check the disk, and that the folder may be written.`;
}
