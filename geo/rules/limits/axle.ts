import type { SubjectRule } from '../rule.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { isOver } from './rounding.ts';
import { adviseAxle, sayAxle } from './say-masses.ts';
import { signDrafts } from './sign-limits.ts';

/**
 * Axle limits against each axle's plate, or against what it carries where that is more. The card knows a front and a
 * rear axle: a bogie limit (two axles close together) is held against the rear plate too, but being over it is only
 * tight, since one axle is no bogie.
 */
export const axle: SubjectRule = (input) => {
  const { front, rear } = input.card.axleKg;
  const { load } = input;
  const heldFront = Math.max(front, load?.frontKg ?? 0);
  const heldRear = Math.max(rear, load?.rearKg ?? 0);
  const held = holdLimits(input, {
    subject: 'axle',
    quantities: ['axle', 'bogie'],
    unit: 'kg',
    unknownAdvice: adviseAxle({ front, rear }),
    judge: (claim, value): Judged | undefined => {
      const of = claim.quantity === 'bogie' ? 'bogie' : 'axle';
      const which = of === 'bogie' || heldRear >= heldFront ? 'rear' : 'front';
      const plateKg = which === 'rear' ? rear : front;
      const heldKg = which === 'rear' ? heldRear : heldFront;
      const actualKg = which === 'rear' ? load?.rearKg : load?.frontKg;
      const spare = value - heldKg;
      if (!isOver(spare)) return undefined;
      return {
        about: { subject: 'axle', kind: 'limit' },
        level: of === 'bogie' || claim.basis === 'advisory' ? 'tight' : 'barred',
        vehicle: {
          value: heldKg,
          unit: 'kg',
          what: heldKg > plateKg ? `${which} axle as loaded` : `${which} axle plate`,
          axle: which,
        },
        spare,
        ...sayAxle({ limitKg: value, plateKg, actualKg, spareKg: spare }, which, of),
      };
    },
  });
  return [...held, ...signDrafts(input, 'axle')];
};
