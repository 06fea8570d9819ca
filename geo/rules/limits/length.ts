import { printLimitM, printMetres, printSizeM } from '../../units/print.ts';
import type { SubjectRule } from '../rule.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { roundMm } from './round-mm.ts';
import { signDrafts } from './sign-limits.ts';

/** Length limits against the overall length with a fitted rack; no margin. */
export const length: SubjectRule = (input) => {
  const { lengthM } = input.envelope;
  const what = input.card.rack?.fitted ? 'length with rack' : 'length';
  const held = holdLimits(input, {
    subject: 'length',
    quantities: ['length'],
    unit: 'm',
    unknownAdvice: `Find out the length limit before driving there; the vehicle is ${printSizeM(lengthM)} long.`,
    judge: (claim, value): Judged | undefined => {
      const spare = roundMm(value - lengthM);
      if (spare >= 0) return undefined;
      return {
        level: claim.basis === 'advisory' ? 'tight' : 'barred',
        vehicle: { value: lengthM, unit: 'm', what },
        spare,
        say: `The length limit is ${printLimitM(value)}; the vehicle is ${printSizeM(lengthM)}${input.card.rack?.fitted ? ' with its rack' : ''}: ${printMetres(-spare, 'up')} too long.`,
        advice: 'Take another road.',
      };
    },
  });
  return [...held, ...signDrafts(input, 'length')];
};
