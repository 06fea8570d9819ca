import type { SubjectRule } from '../rule.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { roundMm } from './rounding.ts';
import { adviseSize, sayTooLong } from './say-sizes.ts';
import { signDrafts } from './sign-limits.ts';

/** Length limits against the overall length with a fitted rack; no margin. */
export const length: SubjectRule = (input) => {
  const { lengthM } = input.envelope;
  const rackFitted = input.card.rack?.fitted === true;
  const bareM = input.card.lengthM;
  const held = holdLimits(input, {
    subject: 'length',
    quantities: ['length'],
    unit: 'm',
    unknownAdvice: adviseSize('length', lengthM),
    judge: (claim, value, place): Judged | undefined => {
      const spare = roundMm(value - lengthM);
      if (spare >= 0) return undefined;
      return {
        about: { subject: 'length', kind: 'limit' },
        level: claim.basis === 'advisory' ? 'tight' : 'barred',
        vehicle: { value: lengthM, unit: 'm', what: rackFitted ? 'length with rack' : 'length' },
        spare,
        ...sayTooLong(
          { limitM: value, vehicleM: lengthM, spareM: spare, units: input.units },
          {
            ...(rackFitted
              ? { rack: roundMm(value - bareM) >= 0 ? { fitsWithoutM: bareM } : 'no help' }
              : {}),
            on: place.tags['route'] === 'ferry' ? 'ferry' : 'road',
          },
        ),
      };
    },
  });
  return [...held, ...signDrafts(input, 'length')];
};
