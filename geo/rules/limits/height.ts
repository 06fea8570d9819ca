import { printLimitM, printMetres, printSizeM } from '../../units/print.ts';
import { HEIGHT_ALLOWANCE_M } from '../../vehicle/envelope.ts';
import type { SubjectRule } from '../rule.ts';
import { doubtOfWord } from './height-word.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { roundMm } from './round-mm.ts';
import { signDrafts } from './sign-limits.ts';

/** Figures outside are slips of the pen or other units: no road has them. */
const LEAST_BELIEVED_M = 1.5;
const MOST_BELIEVED_M = 10;

/** Height under bridges, through tunnels and bars: the lower of the legal and the physical figure decides. */
export const height: SubjectRule = (input) => {
  const { heightM } = input.envelope;
  const held = holdLimits(input, {
    subject: 'height',
    quantities: ['height'],
    unit: 'm',
    unknownAdvice: `Find out the height before driving there; the vehicle needs ${printSizeM(heightM)}.`,
    judge: (claim, value): Judged | undefined => {
      const spare = roundMm(value - heightM);
      const vehicle = { value: input.card.heightM, unit: 'm', what: 'height as measured' };
      const limit = `${claim.basis === 'physical' ? 'The gap is' : 'The limit is'} ${printLimitM(value, heightM)}`;
      const needs = `the vehicle needs ${printSizeM(heightM)} with ${printMetres(HEIGHT_ALLOWANCE_M)} for measuring`;
      if (spare < 0 && claim.basis !== 'advisory')
        return {
          level: 'barred',
          vehicle,
          spare,
          say: `${limit}; ${needs}: ${printMetres(-spare, 'up')} too high.`,
          advice: 'Do not drive under it. Take another road.',
        };
      if (spare < input.margins.heightM)
        return {
          level: 'tight',
          vehicle,
          spare,
          say: `${limit}; ${needs}: ${spare < 0 ? `${printMetres(-spare, 'up')} over` : `${printMetres(spare, 'down')} spare`}.`,
          advice: 'Stop short of it, get out and look before you drive under; keep to the highest part.',
        };
      return undefined;
    },
    disbelieve: (value) =>
      value < LEAST_BELIEVED_M || value > MOST_BELIEVED_M
        ? `${printMetres(value)} is not believed as the height of a road`
        : undefined,
    judgeWord: (kind, place) => doubtOfWord(input, kind, place),
  });
  return [...held, ...signDrafts(input, 'height')];
};
