import { shortIn, type Units } from '../../../units/in-units.ts';
import { type ShownSum, shortSumIn } from '../../../units/sum.ts';
import { MODEL_OFF_M } from '../../model-off.ts';
import { type Decides, type Judged, mayTouch } from '../read/judge.ts';
import type { Separation } from '../read/separation.ts';
import { sayContact, sayOver } from './say-contact.ts';
import { sayFixture } from './say-part.ts';

/** The figure that decides as it is shown: large, and what it is. */
interface SaidDecides {
  readonly number: string;
  readonly says: string;
}

/** `12 cm`, "spare"; `28 cm`, "over the kerb on the way in"; an estimate is called one. */
export function sayDecides(judged: Judged, end: 'tail' | 'nose', units: Units): SaidDecides {
  const { number, says } = saidOf(judged.decides, end, units);
  return { number, says: judged.ends ? `${says}, an estimate` : says };
}

function saidOf(decides: Decides, end: 'tail' | 'nose', units: Units): SaidDecides {
  switch (decides.kind) {
    case 'gap':
      return { number: gapSumIn(units, decides).short, says: decides.spareM < 0 ? 'over' : 'spare' };
    case 'touch':
      return { number: 'touches', says: sayFixture(decides.contact.fixture) };
    case 'over':
      return {
        number: shortIn(units, decides.over.overM, 'up'),
        says: `over ${sayFixture(decides.over.fixture)}`,
      };
    case 'spare':
      return {
        number: shortIn(units, decides.least.gapM, 'down'),
        says: `spare to ${sayFixture(decides.least.fixture)}`,
      };
    case 'swing':
      return { number: shortIn(units, decides.swingM, 'up'), says: `${end} swing` };
  }
}

/** gap − swing = spare, as it is shown. */
export function gapSumIn(
  units: Units,
  { gapM, swingM }: { readonly gapM: number; readonly swingM: number },
): ShownSum {
  return shortSumIn(units, { limit: gapM, needed: swingM });
}

/** What is passed over and what is touched, or may be; and what an estimated lock makes of it at its ends. */
export function sayOutcome(judged: Judged, end: 'tail' | 'nose', units: Units): readonly string[] {
  const { over, ends } = judged;
  return [
    ...(over ? [sayOver(over, units)] : []),
    sayTouch(judged, units),
    ...(ends ? [sayEnds(ends, end, units)] : []),
  ];
}

function sayTouch(judged: Judged, units: Units): string {
  return mayTouch(judged) && judged.least
    ? sayMayTouch(judged.least, units)
    : sayContact(judged.contact, units);
}

/** Less room than the figures are good to. */
export function sayMayTouch({ gapM, fixture }: Separation, units: Units): string {
  return `It may touch ${sayFixture(fixture)}: it comes as near as ${shortIn(units, gapM, 'down')}, and the figures are good to ${shortIn(units, MODEL_OFF_M, 'nearest')}.`;
}

function sayEnds(ends: NonNullable<Judged['ends']>, end: 'tail' | 'nose', units: Units): string {
  const [tight, wide] = ends.map(({ decides }) => {
    const { number, says } = saidOf(decides, end, units);
    return `${number} ${says}`;
  });
  return `The card gives no turning circle. At the tightest lock there may be: ${tight}; at the widest: ${wide}. Measure it in the yard to know.`;
}
