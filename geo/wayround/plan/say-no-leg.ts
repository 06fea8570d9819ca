import type { Finding } from '../../report/finding.ts';
import { lengthIn, type Units } from '../../units/in-units.ts';

/** Places are counted from 1 where a person reads them; legs and places come counted from 0. */

export const MOVE_ONE =
  'Move one of the two places, plan for a vehicle that passes, or load more of the map.';

/** The same where other roads had to do. */
export const NEARER_NONE = 'By the nearer roads there is no way';

/** There is no way on a leg: what the sentences that follow begin with. */
export function sayWayNone(leg: number): string {
  return `From place ${leg + 1} to place ${leg + 2} there is no way`;
}

/** Only a vehicle that stands there headed as it likes gets on. */
export function sayMustTurn(leg: number): string {
  const [from, to] = [leg + 1, leg + 2];
  return `From place ${from} this vehicle comes to place ${to} only by turning round at place ${from}, and the map shows no room to turn there: no turning circle, no loop, no road mapped wide enough. Move place ${from} to a road that leads on, or to where the vehicle can turn.`;
}

/** @param via counted from 0 */
export function sayNotStop(via: number): string {
  return `Place ${via + 1} only leads the line, and lies where only who stops there may drive. Make it a stop, or move it.`;
}

/** So many bars are told. */
const MOST_TOLD = 3;

export function sayBarred(none: string, bars: readonly Finding[]): string {
  const told = bars
    .slice(0, MOST_TOLD)
    .map(({ road, say }) => (road === undefined ? say : `${road}: ${say}`));
  return `${none} that nothing bars. ${told.join(' ')}`;
}

/** @param here what would have to give on what is loaded; '' where nothing mapped would */
export function sayBorder(none: string, here: string): string {
  return `${none} within the map that is loaded: the search came to its edge on both sides. Load the map of the country between and look again.${here}`;
}

export function sayNoRoom(none: string): string {
  return `${none} without turning round on it, and no place is mapped where this vehicle can: a turning circle, a mini-roundabout, or a road wide enough.`;
}

/** @param cut what lies between, as the map has it */
export function sayCut(none: string, cut: string | undefined): string {
  const why =
    cut ?? 'no road on the map leads from one to the other, one-way streets and private ground counted';
  return `${none}: ${why}.`;
}

/** A place is shut in where no more than this share of what the other gets to is left to it. */
const SHUT_IN_SHARE = 0.2;

/** How much road each end of a leg has: what its start gets to, and what leads to its end. Metres. */
interface Ends {
  readonly outM: number;
  readonly inM: number;
}

/** Which of a leg's places is shut in, where one clearly is. */
export function sayShut(leg: number, { outM, inM }: Ends, units: Units): string {
  if (outM < SHUT_IN_SHARE * inM)
    return ` From place ${leg + 1} it gets no farther than ${lengthIn(units, outM)} of road in all.`;
  if (inM < SHUT_IN_SHARE * outM)
    return ` All roads that lead to place ${leg + 2} are ${lengthIn(units, inM)} long together.`;
  return '';
}
