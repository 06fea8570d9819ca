import type { LimitClaim } from '../../tags/limits.ts';
import { printLimitM, printMetres, printSizeM } from '../../units/print.ts';
import type { Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { gapWidths } from './gap-width.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { roundMm } from './round-mm.ts';
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
    unknownAdvice: `Find out the width before driving there; the vehicle is ${printSizeM(input.envelope.mirrorsWidthM)} over its mirrors.`,
    judge: (claim, value, place) =>
      isGap(claim, place) ? judgeGap(input, value) : judgeLegal(input, claim, value, place),
  }),
  ...gapWidths(input),
  ...signDrafts(input, 'width'),
];

function isGap(claim: LimitClaim, place: Place): boolean {
  return claim.basis === 'physical' || (place.type === 'node' && place.tags['barrier'] !== undefined);
}

function judgeLegal(input: RuleInput, claim: LimitClaim, limitM: number, place: Place): Judged | undefined {
  const { bodyWidthM, mirrorsWidthM } = input.envelope;
  const bodySpare = roundMm(limitM - bodyWidthM);
  if (bodySpare < 0)
    return {
      level: claim.basis === 'advisory' ? 'tight' : 'barred',
      vehicle: { value: bodyWidthM, unit: 'm', what: 'body width' },
      spare: bodySpare,
      say: `The width limit is ${printLimitM(limitM)}; the body is ${printSizeM(bodyWidthM)}: ${printMetres(-bodySpare, 'up')} too wide.`,
      advice: 'Take another road.',
    };
  const mirrorSpare = roundMm(limitM - mirrorsWidthM);
  if (mirrorSpare >= 0) return undefined;
  const { code, name, widthSign } = input.along.ruleAt(place.fromM);
  // an unknown country's row is the stricter guess: it bars nobody
  if (widthSign.value === 'with mirrors' && code !== 'other' && claim.basis !== 'advisory')
    return {
      level: 'barred',
      vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
      spare: mirrorSpare,
      say: `The width limit is ${printLimitM(limitM)}; in ${name} it counts the mirrors as driven (${widthSign.source}): ${printSizeM(mirrorsWidthM)}, ${printMetres(-mirrorSpare, 'up')} too wide.`,
      advice: 'Take another road.',
    };
  return {
    level: 'tight',
    vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
    spare: mirrorSpare,
    say: `The width limit is ${printLimitM(limitM)}; the body passes, the mirrors stand ${printMetres(-mirrorSpare, 'up')} over it.`,
    advice: 'Go dead slow; fold the mirrors if posts stand close.',
  };
}

function judgeGap(input: RuleInput, gapM: number): Judged | undefined {
  const { leastWidthM, mirrorsWidthM, foldedKnown, bodyWidthM } = input.envelope;
  const leastSpare = roundMm(gapM - leastWidthM);
  const least = leastWidthM > bodyWidthM ? 'width over folded mirrors' : 'body width';
  if (leastSpare < 0)
    return {
      level: 'barred',
      vehicle: { value: leastWidthM, unit: 'm', what: least },
      spare: leastSpare,
      say: `The gap is ${printLimitM(gapM)}; the ${least} is ${printSizeM(leastWidthM)}: ${printMetres(-leastSpare, 'up')} too wide.`,
      advice: 'It does not fit. Take another road.',
    };
  const spare = roundMm(gapM - mirrorsWidthM);
  if (spare >= input.margins.physicalWidthM) return undefined;
  const folded = foldedKnown ? '' : ' The card does not give the width over folded mirrors.';
  return {
    level: 'tight',
    vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
    spare,
    say:
      spare < 0
        ? `The gap is ${printLimitM(gapM)}; the mirrors need ${printSizeM(mirrorsWidthM)}, ${printMetres(-spare, 'up')} more than there is.${folded}`
        : `The gap is ${printLimitM(gapM, mirrorsWidthM)}; over the mirrors the vehicle is ${printSizeM(mirrorsWidthM)}: ${printMetres(spare, 'down')} spare in all.`,
    advice:
      spare < 0 ? 'Fold the mirrors and have someone walk ahead.' : 'Line up straight and go dead slow.',
  };
}
