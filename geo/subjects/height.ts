import { isSiteRoad } from '../tags/road-class.ts';
import { printLimitM, printMetres, printSizeM } from '../units/print.ts';
import { HEIGHT_ALLOWANCE_M } from '../vehicle/envelope.ts';
import { holdLimits, type Judged } from './hold-limits.ts';
import { roundMm } from './round-mm.ts';
import type { SubjectRule } from './rule.ts';

/** Figures outside are slips of the pen or other units: no road has them. */
const LEAST_BELIEVED_M = 1.5;
const MOST_BELIEVED_M = 10;

/**
 * What "no sign" and "the general rule" grant at least in every country whose rule is known
 * (4.0 m vehicles; 4.3 m and more where the clearance itself is ruled; 5.03 m in Great Britain).
 * A vehicle below needs no country to pass; one above is not proved.
 */
const UNSIGNED_GRANTS_M = 4.0;

/** Height under bridges, through tunnels and bars: the lower of the legal and the physical figure decides. */
export const height: SubjectRule = (input) => {
  const { heightM } = input.envelope;
  const taller = heightM > UNSIGNED_GRANTS_M;
  return holdLimits(input, {
    subject: 'height',
    quantities: ['height'],
    unit: 'm',
    unprovedAdvice: `Find out the height before driving there; the vehicle needs ${printSizeM(heightM)}.`,
    judge: (claim, value): Judged | undefined => {
      const spare = roundMm(value - heightM);
      const vehicle = { value: input.card.heightM, unit: 'm', what: 'height as measured' };
      const limit = `${claim.basis === 'physical' ? 'The gap is' : 'The limit is'} ${printLimitM(value)}`;
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
          level: 'squeeze',
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
    judgeWord: (kind, place) => {
      switch (kind) {
        case 'none':
          return undefined;
        case 'default':
          return taller ? 'only the general rule holds, and the vehicle is taller than 4 m' : undefined;
        case 'unsigned':
          if (taller) return 'there is no sign, and the vehicle is taller than 4 m';
          // signs are a duty on public roads; on private ground their absence says nothing
          return isSiteRoad(place.wayTags)
            ? 'there is no sign, which proves nothing off the public road'
            : undefined;
      }
    },
  });
};
