import { distanceIn, lengthIn } from '../../units/in-units.ts';
import { clip } from '../../units/text.ts';
import type { TurnOff } from '../../wayround/turn-off.ts';

/** A finding before this one that stops the vehicle or may, and its label. */
interface Before {
  readonly label: string;
  readonly fromM: number;
}

/**
 * The last place to turn off before a finding, in words.
 * @param before the barred and tight findings that are met earlier, in driving order
 */
export function sayTurnOff(
  turnOff: TurnOff | undefined,
  { label, fromM: barM }: Before,
  before: readonly Before[],
): string {
  if (turnOff === undefined) return 'No place to turn off before it: do not start.';
  const { atM, side, onto, leads } = turnOff;
  const where = `Last place to turn off before ${label}: ${distanceIn('both', atM)}, ${lengthIn('both', Math.max(0, barM - atM))} before it, ${sayInto(side, onto)}`;
  const goes = leads === 'on' ? 'a way leads on from there' : 'a way leads back from there';
  // the first that lies behind the place: who passes it can turn off no more
  const passed = before.find(({ fromM }) => fromM >= atM);
  const early = passed === undefined ? '' : ` It lies before ${passed.label}: none comes after that.`;
  return `${where}; ${goes}.${early}`;
}

function sayInto(side: TurnOff['side'], onto: string | undefined): string {
  if (side === 'round') return 'turn round there';
  const road = onto === undefined ? 'a road without a name' : clip(onto, 60);
  return side === 'straight on' ? `straight on along ${road}` : `${side} into ${road}`;
}
