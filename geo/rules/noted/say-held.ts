import type { LocalNote } from '../../notes/note.ts';
import { sayLeave, sayMeasured, sayNoted } from '../../notes/say-note.ts';
import { sizeIn, type Units } from '../../units/in-units.ts';
import { printKg, printSizeM } from '../../units/print.ts';
import { capital } from '../../units/text.ts';
import type { RuleInput } from '../rule.ts';
import type { Words } from '../words.ts';
import type { FigureHeld } from './hold-figure.ts';

/** What a figure of the firm's own means. @param input whose vehicle it is held against */
export function sayHeld(held: FigureHeld, { envelope, units }: RuleInput): Words {
  const { note, figure, judged } = held;
  const measured = capital(sayMeasured(note, figure));
  if (judged !== undefined)
    return { say: `${measured}. ${judged.say} ${sayNoted(note)}.`, advice: judged.advice };
  return {
    say: `${measured}; ${sayFits(held, envelope.heightM, units)}. ${sayNoted(note)}.`,
    advice: 'Read the sign there all the same: it decides.',
  };
}

function sayFits(
  { figure: { subject }, sum: { vehicle, spare } }: FigureHeld,
  neededM: number,
  units: Units,
): string {
  if (subject === 'mass') return `the vehicle is plated at ${printKg(vehicle.value, 'up')}`;
  const left = `which leaves ${sizeIn(units, spare, 'down')}`;
  return subject === 'height'
    ? `the vehicle needs ${printSizeM(neededM)}, ${left}`
    : `the vehicle is ${printSizeM(vehicle.value)} over its mirrors, ${left}`;
}

/** A mapped limit beside a figure of the firm's own, which changes nothing about it. */
export function sayBesideLimit(say: string, held: FigureHeld, is: 'milder' | 'no milder'): string {
  const measured = capital(sayMeasured(held.note, held.figure));
  const firm =
    is === 'milder'
      ? `${measured}: read the sign, have the map mended. Until then the lower figure holds.`
      : `${measured}.`;
  return `${say} ${firm} ${sayNoted(held.note)}.`;
}

/** The notes whose figure gives way to a lower one there: what they say counts all the same. */
export function sayOthers(say: string, there: readonly FigureHeld[], lowest: FigureHeld): string {
  const others = there.filter(({ note }) => note !== lowest.note);
  return others.reduce((text, held) => sayBesideLimit(text, held, 'no milder'), say);
}

/** The firm's words beside what they answer. */
export function sayBeside(say: string, note: LocalNote): string {
  return `${say} ${sayNoted(note)}.`;
}

/** The firm's word that it may drive where leave is asked for. */
export function sayAllowed(say: string, note: LocalNote): Words {
  return {
    say: `${say} ${sayLeave(note)}.`,
    advice: 'Keep to what was agreed. A locked gate, a sign or whoever stands there decides.',
  };
}

/** The firm's words by themselves. */
export function sayAlone(note: LocalNote): Words {
  return { say: `${sayNoted(note)}.`, advice: 'Drive there as the note says.' };
}
