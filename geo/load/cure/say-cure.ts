import { printKg, printLitres } from '../../units/print.ts';
import { capital, quote } from '../../units/text.ts';
import { RACK } from '../../vehicle/place-names.ts';
import { sayPlate } from '../weigh/say-plates.ts';
import { decidingOf } from '../weigh/sums.ts';
import type { Cure, Cures } from './cure.ts';

/** `drain 26 l from the tank and leave the box behind (31 kg)` */
export function sayCure({ steps }: Cure): string {
  const said = steps.map((step) => {
    switch (step.kind) {
      case 'drain':
        return `drain ${printLitres(step.litres, 'up', 1)} from ${quote(step.name)}`;
      case 'leave':
        return `leave ${quote(step.item.name)} behind (${printKg(step.massKg)})`;
      default:
        return `move ${quote(step.item.name)} (${printKg(step.massKg)}) to ${step.to.name === RACK ? 'the rack' : quote(step.to.name)}`;
    }
  });
  const last = said.pop() ?? 'nothing';
  return said.length === 0 ? last : `${said.join(', ')} and ${last}`;
}

/** The same as a sentence. */
export function sayCureUpper(cure: Cure): string {
  return capital(sayCure(cure));
}

/** What to do about an overload: a sentence, the other ways after it, and what the first leaves. */
export function sayCures(cures: Cures): string {
  const [best, ...others] = cures.cures;
  if (best === undefined) return sayNoCure(cures);
  const or = others.map((cure) => `; or ${sayCure(cure)}`).join('');
  const fewer = cures.proved ? '' : ' There may be a way with fewer steps.';
  const then = best.after ? ` Then ${sayPlate(decidingOf(best.after))}.` : '';
  return `${capital(sayCure(best))}${or}.${then}${fewer}`;
}

/** That nothing helps, or that nothing was found. */
export function sayNoCure({ proved }: Pick<Cures, 'proved'>): string {
  return proved
    ? 'Nothing listed can be moved, drained or left behind to cure it: another vehicle is needed, or a higher plate.'
    : 'No way out was found among so many items: leave the heaviest behind and try again.';
}

/** The same of something that is only asked about. */
export function sayNoRoom(cures: Pick<Cures, 'proved'>): string {
  return cures.proved
    ? 'Nothing else on board makes room for it: take less of it along, or put right first what is over already.'
    : sayNoCure(cures);
}
