import { isFact } from '../../country/cited.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { gapWidths } from './gap-width.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { roundMm } from './rounding.ts';
import {
  adviseSize,
  sayBodyTooWide,
  sayGapTooNarrow,
  sayMirrorsCount,
  sayMirrorsOver,
  sayTightGap,
} from './say-sizes.ts';
import { signDrafts } from './sign-limits.ts';

/**
 * Width limits. A legal one is held against the body, or over the mirrors where the country's sign counts them; a
 * physical one, and any at a barrier, against what must pass.
 */
export const width: SubjectRule = (input) => [
  ...holdLimits(input, {
    subject: 'width',
    quantities: ['width'],
    unit: 'm',
    unknownAdvice: adviseSize('width', input.envelope.mirrorsWidthM),
    judge: (claim, value, place) =>
      isGap(claim, place) ? judgeGap(input, value) : judgeLegal(input, claim, value, place),
  }),
  ...gapWidths(input),
  ...signDrafts(input, 'width'),
];

function isGap(claim: LimitClaim, place: Place): boolean {
  return claim.basis === 'physical' || (place.type === 'node' && place.tags['barrier'] !== undefined);
}

const OF_LIMIT = { subject: 'width', kind: 'limit' } as const;
const OF_GAP = { subject: 'width', kind: 'gap' } as const;

function judgeLegal(input: RuleInput, claim: LimitClaim, limitM: number, place: Place): Judged | undefined {
  const { bodyWidthM, mirrorsWidthM } = input.envelope;
  const bodySpare = roundMm(limitM - bodyWidthM);
  if (bodySpare < 0)
    return {
      about: OF_LIMIT,
      level: claim.basis === 'advisory' ? 'tight' : 'barred',
      vehicle: { value: bodyWidthM, unit: 'm', what: 'body width' },
      spare: bodySpare,
      ...sayBodyTooWide({ limitM, vehicleM: bodyWidthM, spareM: bodySpare, units: input.units }),
    };
  const mirrorSpare = roundMm(limitM - mirrorsWidthM);
  if (mirrorSpare >= 0) return undefined;
  const country = input.along.ruleAt(place.fromM);
  const sum = { limitM, vehicleM: mirrorsWidthM, spareM: mirrorSpare, units: input.units };
  const judged = {
    about: OF_LIMIT,
    vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
    spare: mirrorSpare,
  };
  // where nobody read what the sign counts, the stricter guess bars nobody
  if (country.widthSign.value === 'with mirrors' && isFact(country.widthSign) && claim.basis !== 'advisory')
    return { ...judged, level: 'barred', ...sayMirrorsCount(sum, country) };
  return { ...judged, level: 'tight', ...sayMirrorsOver(sum) };
}

/** What a gap of so many metres means for the vehicle; undefined: it passes freely. */
export function judgeGap(input: RuleInput, gapM: number): Judged | undefined {
  const { leastWidthM, mirrorsWidthM, foldedKnown, bodyWidthM } = input.envelope;
  const leastSpare = roundMm(gapM - leastWidthM);
  const least = leastWidthM > bodyWidthM ? 'width over folded mirrors' : 'body width';
  if (leastSpare < 0)
    return {
      about: OF_GAP,
      level: 'barred',
      vehicle: { value: leastWidthM, unit: 'm', what: least },
      spare: leastSpare,
      ...sayGapTooNarrow(
        { limitM: gapM, vehicleM: leastWidthM, spareM: leastSpare, units: input.units },
        least,
      ),
    };
  const spare = roundMm(gapM - mirrorsWidthM);
  if (spare >= input.margins.physicalWidthM) return undefined;
  return {
    about: OF_GAP,
    level: 'tight',
    vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
    spare,
    ...sayTightGap(
      { limitM: gapM, vehicleM: mirrorsWidthM, spareM: spare, units: input.units },
      foldedKnown ? 'known' : 'not known',
    ),
  };
}
