import { dayInWords } from '../../clock/print-dates.ts';
import type { HandedBody } from '../../library/body/handed.ts';
import { homeByOf } from './overlaps.ts';

/** Whether a sheet's vehicle is out, is due and not back, or is back. */
export type Standing =
  | { readonly kind: 'out' }
  | { readonly kind: 'due' }
  /** YYYY-MM-DD */
  | { readonly kind: 'back'; readonly on: string };

/**
 * @param back the day that the vehicle came back, where somebody has told
 * @param now local wall time, YYYY-MM-DDTHH:MM
 */
export function standingOf(sheet: Pick<HandedBody, 'plan'>, back: string | undefined, now: string): Standing {
  if (back !== undefined) return { kind: 'back', on: back };
  const homeBy = homeByOf(sheet);
  return { kind: homeBy !== undefined && homeBy < now ? 'due' : 'out' };
}

/** In words; '' for a vehicle that is out as it should be. */
export function sayStanding(standing: Standing): string {
  switch (standing.kind) {
    case 'out':
      return '';
    case 'due':
      return 'due, not back';
    case 'back':
      return `back ${dayInWords(standing.on)}`;
  }
}

interface Listed {
  readonly standing: Standing;
  readonly verdict?: HandedBody['verdict'];
}

/** Barred first, then those due and not back, those that are back last; else as they came. */
export function gravestOutFirst<S extends Listed>(sheets: readonly S[]): S[] {
  const rank = ({ standing, verdict }: Listed) => {
    if (standing.kind === 'back') return 3;
    return verdict === 'barred' ? 0 : standing.kind === 'due' ? 1 : 2;
  };
  return [...sheets].sort((a, b) => rank(a) - rank(b));
}
