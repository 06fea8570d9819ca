import type { Subject } from '../../report/kinds.ts';
import type { Draft } from '../../rules/finding.ts';
import type { Asking } from './ask-rules.ts';
import { PRICES } from './prices.ts';

/** Whether a vehicle may use a road: always, only where the drive begins or ends there, or never. */
export const OPEN = { always: 0, atEnds: 1, never: 2 } as const;

/** What the checker's rules come to for one kind of road or point and one vehicle. */
export interface Judged {
  readonly open: number;
  /** barred findings where it is passed through; those that hold even for who goes there, where it is shut to all */
  readonly bars: readonly Draft[];
  /** tenths of seconds for what is tight or unknown, once where it is met */
  readonly priceTenths: number;
  /** something there is tight or unknown */
  readonly doubt: boolean;
  /** a rule asked for the clock */
  readonly clocked: boolean;
}

export const FREE: Judged = { open: OPEN.always, bars: [], priceTenths: 0, doubt: false, clocked: false };

/**
 * Who may drive there at all is asked first: most of what bars is shut to all (a one-way street driven against, a path),
 * and of that nothing else is worth asking.
 * @param ask the checker's rules, for who passes through and for who goes there
 */
export function judge(
  ask: (reach: 'through' | 'within', asking: Asking) => readonly Draft[],
  clocked: () => boolean,
): Judged {
  const mayPass = ask('through', 'access');
  const mayGo = barsOf(mayPass).length === 0 ? undefined : ask('within', 'access');
  const shut = barsOf(mayGo ?? []);
  if (shut.length > 0)
    return { priceTenths: 0, doubt: false, open: OPEN.never, bars: shut, clocked: clocked() };
  const through = [...mayPass, ...ask('through', 'others')];
  const bars = barsOf(through);
  if (bars.length === 0) return { ...weigh(through), open: OPEN.always, bars, clocked: clocked() };
  const within = [...(mayGo ?? ask('within', 'access')), ...ask('within', 'others')];
  const held = barsOf(within);
  return held.length === 0
    ? { ...weigh(within), open: OPEN.atEnds, bars, clocked: clocked() }
    : { ...weigh(within), open: OPEN.never, bars: held, clocked: clocked() };
}

function barsOf(drafts: readonly Draft[]): Draft[] {
  return drafts.filter(({ level }) => level === 'barred');
}

function weigh(drafts: readonly Draft[]): Pick<Judged, 'priceTenths' | 'doubt'> {
  const told = drafts.filter(
    ({ level, folded }) => folded !== true && (level === 'tight' || level === 'unknown'),
  );
  // several words on one subject at one place are one reason to keep away
  const bySubject = new Map<Subject, number>();
  for (const draft of told)
    bySubject.set(draft.subject, Math.max(bySubject.get(draft.subject) ?? 0, priceS(draft)));
  const sum = [...bySubject.values()].reduce((a, b) => a + b, 0);
  return { priceTenths: Math.round(sum * 10), doubt: told.length > 0 };
}

/** Seconds for one finding. */
export function priceS({ subject, level }: Pick<Draft, 'subject' | 'level'>): number {
  if (subject === 'water' || subject === 'slope') return PRICES.fordOrSteepS;
  if (level === 'tight') return PRICES.tightS;
  return level === 'unknown' ? PRICES.unknownS : PRICES.foldedS;
}
