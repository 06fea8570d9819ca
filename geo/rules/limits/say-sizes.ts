import type { Cited } from '../../country/cited.ts';
import type { MappedGap } from '../../tags/mapped-gap.ts';
import { sizeIn, type Units } from '../../units/in-units.ts';
import { printSizeM } from '../../units/print.ts';
import { sizeSumIn } from '../../units/sum.ts';
import { capital } from '../../units/text.ts';
import { HEIGHT_ALLOWANCE_M } from '../../vehicle/envelope.ts';
import type { Words } from '../words.ts';

/** A figure against the vehicle's: metres; the spare is negative where the vehicle is over. */
export interface SizeSum {
  readonly limitM: number;
  readonly vehicleM: number;
  readonly spareM: number;
  /** what the difference of the two is told in; they themselves are told in both */
  readonly units: Units;
}

/** The sum as it is shown beside the finding too: one figure, one rounding, and the inches add up. */
function shownIn({ limitM, vehicleM }: SizeSum, units: Units) {
  return sizeSumIn(units, { limit: limitM, needed: vehicleM });
}

/** The limit: `2.10 m (6'10")` */
const limitOf = (sum: SizeSum) => shownIn(sum, 'both').limit;

/** What the vehicle needs: `2.45 m (8'1")` */
const neededOf = (sum: SizeSum) => shownIn(sum, 'both').needed;

/** What is left, or what it is over by. */
const sayBy = (sum: SizeSum) => shownIn(sum, sum.units).short;

/** @param of a sign's limit, or the gap itself; it is held against the height the vehicle needs */
function sayHeight(sum: SizeSum, of: 'limit' | 'gap'): string {
  const limit = `${of === 'gap' ? 'The gap is' : 'The limit is'} ${limitOf(sum)}`;
  return `${limit}; the vehicle needs ${neededOf(sum)} with ${sizeIn(sum.units, HEIGHT_ALLOWANCE_M, 'nearest')} for measuring`;
}

export function sayTooHigh(sum: SizeSum, of: 'limit' | 'gap'): Words {
  return {
    say: `${sayHeight(sum, of)}: ${sayBy(sum)} too high.`,
    advice: 'Do not drive under it. Take another road.',
  };
}

export function sayTightHeight(sum: SizeSum, of: 'limit' | 'gap'): Words {
  const { spareM } = sum;
  return {
    say: `${sayHeight(sum, of)}: ${sayBy(sum)} ${spareM < 0 ? 'over' : 'spare'}.`,
    advice: 'Stop short of it, get out and look before you drive under; keep to the highest part.',
  };
}

/** A vehicle too long: the rack on it, whether it would fit without, and what is too short for it. */
export interface TooLong {
  /** undefined: no rack is fitted */
  readonly rack?: 'no help' | { readonly fitsWithoutM: number };
  readonly on: 'road' | 'ferry';
}

export function sayTooLong(sum: SizeSum, { rack, on }: TooLong): Words {
  const other = on === 'ferry' ? 'book another crossing' : 'take another road';
  return {
    say: `The length limit is ${limitOf(sum)}; the vehicle is ${neededOf(sum)}${rack === undefined ? '' : ' with its rack'}: ${sayBy(sum)} too long.`,
    advice:
      typeof rack === 'object'
        ? `Take the rack off (without it the vehicle is ${printSizeM(rack.fitsWithoutM)}), or ${other}.`
        : `${capital(other)}.`,
  };
}

export function sayBodyTooWide(sum: SizeSum): Words {
  return {
    say: `The width limit is ${limitOf(sum)}; the body is ${neededOf(sum)}: ${sayBy(sum)} too wide.`,
    advice: 'Take another road.',
  };
}

/** @param country whose width sign counts the mirrors, by which source */
export function sayMirrorsCount(
  sum: SizeSum,
  country: { readonly name: string; readonly widthSign: Cited<unknown> },
): Words {
  return {
    say: `The width limit is ${limitOf(sum)}; in ${country.name} it counts the mirrors as driven: ${neededOf(sum)}, ${sayBy(sum)} too wide.`,
    advice: 'Take another road.',
  };
}

export function sayMirrorsOver(sum: SizeSum): Words {
  return {
    say: `The width limit is ${limitOf(sum)}; the body passes, the mirrors stand ${sayBy(sum)} over it.`,
    advice: 'Go dead slow; fold the mirrors if posts stand close.',
  };
}

/** What must pass a gap at the least. */
export type LeastWidth = 'width over folded mirrors' | 'body width';

export function sayGapTooNarrow(sum: SizeSum, least: LeastWidth): Words {
  return {
    say: `The gap is ${limitOf(sum)}; the ${least} is ${neededOf(sum)}: ${sayBy(sum)} too wide.`,
    advice: 'It does not fit. Take another road.',
  };
}

/** @param foldedWidth whether the card gives the width over folded mirrors */
export function sayTightGap(sum: SizeSum, foldedWidth: 'known' | 'not known'): Words {
  const folded = foldedWidth === 'known' ? '' : ' The card does not give the width over folded mirrors.';
  return {
    say:
      sum.spareM < 0
        ? `The gap is ${limitOf(sum)}; the mirrors need ${neededOf(sum)}, ${sayBy(sum)} more than there is.${folded}`
        : `The gap is ${limitOf(sum)}; over the mirrors the vehicle is ${neededOf(sum)}: ${sayBy(sum)} spare in all.`,
    advice: adviseTightGap(sum.spareM),
  };
}

function adviseTightGap(spareM: number): string {
  return spareM < 0 ? 'Fold the mirrors and have someone walk ahead.' : 'Line up straight and go dead slow.';
}

/** A plain width mapped on a thing: perhaps the gap, perhaps the thing. */
function sayMapped({ key, text, on }: MappedGap): string {
  return `"${key}=${text}"${key === 'est_width' ? ' (an estimate)' : ''} is mapped on ${on}`;
}

export function sayGapUnreadable(gap: MappedGap, mirrorsM: number): Words {
  return {
    say:
      gap.reading.kind === 'not believed'
        ? `${sayMapped(gap)}: ${gap.reading.reason}.`
        : `${sayMapped(gap)} and cannot be read.`,
    advice: `Look before you drive through; over the mirrors the vehicle is ${printSizeM(mirrorsM)}.`,
  };
}

export function sayPerhapsTooNarrow(gap: MappedGap, sum: SizeSum, least: LeastWidth): Words {
  return {
    say: `${sayMapped(gap)}; the ${least} is ${neededOf(sum)}: ${sayBy(sum)} too wide, if that is the gap.`,
    advice: 'Find out how wide the gap is, or take another road.',
  };
}

export function sayPerhapsTight(gap: MappedGap, sum: SizeSum): Words {
  return {
    say: `${sayMapped(gap)}; over the mirrors the vehicle is ${neededOf(sum)}: ${sayBy(sum)} ${sum.spareM < 0 ? 'more than that' : 'spare in all'}.`,
    advice: adviseTightGap(sum.spareM),
  };
}

/** What to find out where a size's limit proves nothing. @param sizeM the vehicle's own */
export function adviseSize(subject: 'height' | 'width' | 'length', sizeM: number): string {
  const size = printSizeM(sizeM);
  switch (subject) {
    case 'height':
      return `Find out the height before driving there; the vehicle needs ${size}.`;
    case 'width':
      return `Find out the width before driving there; the vehicle is ${size} over its mirrors.`;
    case 'length':
      return `Find out the length limit before driving there; the vehicle is ${size} long.`;
  }
}
