import type { LimitClaim } from '../../tags/limits.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { doubtOfWord } from './height-word.ts';
import { holdLimits } from './hold-limits.ts';
import type { Doubt, Judged } from './limit-rule.ts';
import { roundMm } from './rounding.ts';
import { whyWord } from './say-limits.ts';
import { adviseSize, sayTightHeight, sayTooHigh } from './say-sizes.ts';
import { signDrafts } from './sign-limits.ts';

/** Height under bridges, through tunnels and bars: the lower of the legal and the physical figure decides. */
export const height: SubjectRule = (input) => {
  const { heightM } = input.envelope;
  const held = holdLimits(input, {
    subject: 'height',
    quantities: ['height'],
    unit: 'm',
    unknownAdvice: adviseSize('height', heightM),
    judge: (claim, value) => judgeHeight(input, claim.basis, value),
    judgeWord: (word, place): Doubt | undefined => {
      const doubt = doubtOfWord(input, word, place);
      return doubt && { of: 'no figure', why: whyWord(doubt), wants: 'measure' };
    },
  });
  return [...held, ...signDrafts(input, 'height')];
};

/** What a height of so many metres means for the vehicle; undefined: it passes freely. */
export function judgeHeight(
  { card, envelope, margins, units }: RuleInput,
  basis: LimitClaim['basis'],
  limitM: number,
): Judged | undefined {
  const { heightM } = envelope;
  const spare = roundMm(limitM - heightM);
  const sum = { limitM, vehicleM: heightM, spareM: spare, units };
  const of = basis === 'physical' ? 'gap' : 'limit';
  const judged = {
    about: { subject: 'height' as const, kind: 'limit' as const },
    vehicle: { value: card.heightM, unit: 'm', what: 'height as measured' },
    spare,
  };
  if (spare < 0 && basis !== 'advisory') return { ...judged, level: 'barred', ...sayTooHigh(sum, of) };
  if (spare < margins.heightM) return { ...judged, level: 'tight', ...sayTightHeight(sum, of) };
  return undefined;
}
