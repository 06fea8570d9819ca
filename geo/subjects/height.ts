import type { CountryRule } from '../country/rule.ts';
import type { Tags } from '../roads/roads.ts';
import { isSiteRoad } from '../tags/road-class.ts';
import { printLimitM, printMetres, printSizeM } from '../units/print.ts';
import { HEIGHT_ALLOWANCE_M } from '../vehicle/envelope.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { makeFindings } from './make-finding.ts';
import { roundMm } from './round-mm.ts';
import type { SubjectRule } from './rule.ts';
import { signDrafts } from './sign-limits.ts';

/** Figures outside are slips of the pen or other units: no road has them. */
const LEAST_BELIEVED_M = 1.5;
const MOST_BELIEVED_M = 10;

/** What an unknown country's general rule is taken to grant: the commonest legal height, from memory. */
const GRANTS_ANYWHERE_M = 4.0;

/**
 * The height that passes where no figure is signed, in the country of the place.
 * `default` is the general rule for vehicles, `unsigned` what a road without a sign promises.
 */
function grantedM(rule: CountryRule, kind: 'default' | 'unsigned', tags: Tags): number {
  const { leastM, motorwayLeastM } = rule.unsignedHeight.value;
  const promised = tags['highway'] === 'motorway' ? (motorwayLeastM ?? leastM) : leastM;
  const legal = rule.legalHeightM.value;
  return (kind === 'default' ? (legal ?? promised) : (promised ?? legal)) ?? GRANTS_ANYWHERE_M;
}

/** Height under bridges, through tunnels and bars: the lower of the legal and the physical figure decides. */
export const height: SubjectRule = (input) => {
  const { heightM } = input.envelope;
  const held = holdLimits(input, {
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
      if (kind === 'none') return undefined;
      const grants = grantedM(input.along.ruleAt(place.fromM), kind, place.wayTags);
      const taller = heightM > grants;
      const than = `the vehicle needs more than the ${printMetres(grants)} that stand for it here`;
      if (kind === 'default') return taller ? `only the general rule holds, and ${than}` : undefined;
      if (taller) return `there is no sign, and ${than}`;
      // signs are a duty on public roads; on private ground their absence says nothing
      return isSiteRoad(place.wayTags)
        ? 'there is no sign, which proves nothing off the public road'
        : undefined;
    },
  });
  return [...held, ...makeFindings(input, 'height', signDrafts(input, 'height'))];
};
