import type { LocalMoment } from '../clock/moment.ts';
import { alpha2 } from '../country/country-of.ts';
import { type ConditionContext, figuresOf, type Reach } from '../tags/conditional/context.ts';
import { goodsSignsAt } from './goods-signs.ts';
import { type Place, placeAt } from './places.ts';
import type { RuleInput } from './rule.ts';

/**
 * What decides the conditions at a place: one context, or two where the vehicle enters and leaves it at different
 * minutes.
 */
export function contextsAt(input: RuleInput, place: Place, reach: Reach): ConditionContext[] {
  const { along, card, envelope, load } = input;
  const country = along.countryAt(place.fromM);
  const where = placeAt(input, place.fromM);
  const context = (moment: LocalMoment | undefined): ConditionContext => ({
    vehicle: figuresOf(card, envelope, load),
    moment,
    place: { ...where, country: country === undefined ? undefined : alpha2(country) },
    reach,
    goodsSigns: goodsSignsAt(input, place.fromM)?.are,
  });
  const comes = along.clockAt(place.fromM, place);
  const goes = place.toM > place.fromM ? along.clockAt(place.toM, place) : comes;
  const same = comes?.minute === goes?.minute && comes?.hour === goes?.hour && comes?.day === goes?.day;
  return same ? [context(comes)] : [context(comes), context(goes)];
}
