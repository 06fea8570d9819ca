import type { Finding } from './finding.ts';
import type { Kind } from './kinds.ts';

/** Of the map itself: who plans the drive can mend it or get another map, who drives it can do neither. */
const ON_THE_MAP: Readonly<Partial<Record<Kind, string>>> = {
  'nothing on the map': 'Nothing of this drive is checked: ask the firm before setting off.',
  incomplete: 'Read every sign: what is missing here is not checked. Ask the firm before setting off.',
  'off the map': 'Read every sign: nothing here is checked. Ask the firm before setting off.',
  'gap in the route': 'Ask the firm, before setting off, which way to take in between.',
  guessed: 'Follow the line on the map. In doubt stop, and ask the firm.',
  'doubtful road': 'Never drive against a one-way sign: ask the firm which road is meant.',
};

/** What to do at a finding, told to who drives: on paper, on a phone, on a device. */
export function driverAdvice({ subject, kind, advice }: Finding): string {
  return (subject === 'map' ? ON_THE_MAP[kind] : undefined) ?? advice;
}
