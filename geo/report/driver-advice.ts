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

/** Of a drive laid out against the law: who plans it can lay it out otherwise. */
const ON_THE_PLAN: Readonly<Partial<Record<Kind, string>>> = {
  'one-way': 'Do not turn in against the sign: stop, and ask the firm which way is meant.',
  'turn restriction':
    'Do not make this turn: drive on to where you may stop, and ask the firm which way is meant.',
};

/** What to do at a finding, told to who drives: on paper, on a phone, on a device. */
export function driverAdvice(finding: Finding): string {
  const { subject, kind, level, wants, leaveTimes, advice } = finding;
  if (subject === 'map') return ON_THE_MAP[kind] ?? advice;
  // what holds by the hour alone is told with its hours
  if (subject === 'access' && level === 'barred' && leaveTimes === undefined)
    return ON_THE_PLAN[kind] ?? advice;
  // a card that lacks the unladen mass is the firm's to complete
  if (subject === 'mass' && level === 'unknown' && wants === 'measure')
    return 'Ask the firm for the unladen mass before setting off; without it take another road.';
  return advice;
}
