import type { Tags } from '../roads/roads.ts';

/** What a broken turn restriction means for a motorhome. */
export interface TurnRule {
  readonly binds: 'yes' | 'no' | 'unsure';
  readonly key: string;
  readonly text: string;
}

const BINDING_KEYS = [
  'restriction:motorhome',
  'restriction:motor_vehicle',
  'restriction:vehicle',
  'restriction',
];
const KNOWN =
  /^(no_(left_turn|right_turn|straight_on|u_turn|entry|exit)|only_(left_turn|right_turn|straight_on|u_turn))$/;
const EXEMPT = new Set(['motorhome', 'motor_vehicle', 'vehicle']);
/** old ways of writing a condition */
const TIME_KEYS = ['day_on', 'day_off', 'hour_on', 'hour_off'];

/** Whether a turn restriction's tags bind a motorhome; restrictions for goods vehicles, buses and others do not. */
export function turnRuleFor(tags: Tags): TurnRule {
  const except = (tags['except'] ?? '').split(';').map((part) => part.trim());
  const exempt = except.find((part) => EXEMPT.has(part));
  if (exempt !== undefined) return { binds: 'no', key: 'except', text: tags['except'] ?? '' };
  for (const key of BINDING_KEYS) {
    const conditional = tags[`${key}:conditional`];
    if (conditional !== undefined) return { binds: 'unsure', key: `${key}:conditional`, text: conditional };
    const text = tags[key];
    if (text === undefined) continue;
    const unsure = !KNOWN.test(text) || except.includes('motorcar') || TIME_KEYS.some((time) => time in tags);
    return { binds: unsure ? 'unsure' : 'yes', key, text };
  }
  return { binds: 'no', key: '', text: '' };
}
