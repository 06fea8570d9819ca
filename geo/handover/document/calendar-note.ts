import type { HandOverDocument } from './document.ts';

/** What stands in each entry of the calendar: the verdict first, then what it means, then the sheet's number. */
export function calendarNote({ verdict }: Pick<HandOverDocument, 'verdict'>, number: string): string {
  // of a barred drive the sentence itself begins with it
  const word = verdict.level === 'barred' ? '' : `${verdict.head}. `;
  return `${word}${verdict.say} Sheet ${number}.`;
}
