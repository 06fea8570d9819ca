import type { HoursPlace } from '../../clock/hours.ts';
import type { LocalMoment } from '../../clock/moment.ts';
import type { LoadFigures } from '../../load/weigh/figures.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { Envelope } from '../../vehicle/envelope.ts';
import type { Property } from './conditional.ts';

/** The vehicle's figure for each property, in kilograms, metres, or axles; a missing one is not known. */
export type VehicleFigures = { readonly [P in Property]?: number | undefined } & {
  readonly gasKg?: number | undefined;
};

/**
 * Whether the drive goes to a place or past it: `within` the unbroken restricted run at its start or end, or `through`.
 */
export type Reach = 'through' | 'within';

/** All that decides whether a condition holds for this vehicle, there and then. */
export interface ConditionContext {
  readonly vehicle: VehicleFigures;
  /** when the vehicle passes, on the clock of the place; undefined when no leave time is given */
  readonly moment?: LocalMoment | undefined;
  readonly place?: HoursPlace | undefined;
  /** undefined: not known */
  readonly reach?: Reach | undefined;
  /** whether signs for goods vehicles bind this motorhome here; left out, they do not */
  readonly goodsSigns?: 'bind' | 'unsure' | undefined;
}

/**
 * The figures conditions are judged on. The mass is the plated one: what the vehicle weighs that day may be less,
 * which is never credited; what it weighs more is. The width is the body's; the axle load the greater of the two plates.
 */
export function figuresOf(card: VehicleCard, envelope: Envelope, load?: LoadFigures): VehicleFigures {
  return {
    weight: Math.max(envelope.grossKg, load?.grossKg ?? 0),
    weightrating: envelope.grossKg,
    axleload: Math.max(envelope.frontAxleKg, envelope.rearAxleKg, load?.frontKg ?? 0, load?.rearKg ?? 0),
    emptyweight: card.unladenKg,
    length: envelope.lengthM,
    height: envelope.heightM,
    width: envelope.bodyWidthM,
    // the card knows a front and a rear axle
    axles: 2,
    gasKg: card.gasKg,
  };
}
