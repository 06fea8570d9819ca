import { type WallTime, wallTimeText } from '../clock/moment.ts';
import { sayTime } from '../tags/say-condition.ts';
import type { Draft } from './finding.ts';
import type { Place } from './places.ts';
import type { RuleInput } from './rule.ts';

/** When the clock next lets the vehicle by. */
export interface Opens {
  /** as `Draft.opensAt` */
  readonly opensAt: string;
  /** "Thursday 08:00" to who passes there */
  readonly when: string;
}

/**
 * A change of the clock at a place, to whoever passes it.
 * @returns undefined without a change, or without a leave time to tell the hour from
 */
export function opensFrom({ along }: RuleInput, place: Place, at: WallTime | undefined): Opens | undefined {
  const now = at && along.clockAt(place.toM, place);
  if (at === undefined || now === undefined) return undefined;
  return { opensAt: wallTimeText(at).replace(' ', 'T'), when: sayTime(at, now) };
}

/** What is said of a closure, and when it opens. */
export function withOpens<T extends Pick<Draft, 'advice'>>(
  said: T,
  opens: Opens | undefined,
): T & Pick<Draft, 'opensAt'> {
  if (opens === undefined) return said;
  return { ...said, opensAt: opens.opensAt, advice: `${said.advice} Free from ${opens.when}.` };
}
