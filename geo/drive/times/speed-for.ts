import type { Source } from '../../country/cited.ts';
import { saySpeed } from '../../country/say-rule.ts';
import { given } from '../../given.ts';
import type { Tags } from '../../roads/roads.ts';
import { type LimitOptions, legalLimit } from './legal-limit.ts';
import { likelySpeed } from './likely-speed.ts';
import type { SpeedVehicle } from './speed-band.ts';

/** How fast one vehicle goes on one road. km/h. */
export interface RoadSpeed {
  /** likely driven between junctions and bends */
  readonly kmh: number;
  /** the law's; absent where no limit stands */
  readonly legalKmh?: number;
  /** whether the legal figure is mapped on the road */
  readonly mapped: boolean;
  readonly why: {
    /** `Limit 30 mph`, `No limit` */
    readonly law: string;
    /** what that comes from */
    readonly because: string;
    /** what holds the vehicle to the likely speed */
    readonly likely: string;
  };
  /** the general rule that holds and its source, unless the limit is mapped; the likely speed is common practice */
  readonly general?: { readonly what: string; readonly source: Source };
  readonly notes: readonly string[];
}

/**
 * Legal and likely speed of a vehicle on a road with these tags. `country` as `countryOf` gives it,
 * undefined when not known (cautious general figures, said in `notes`).
 */
export function speedFor(
  tags: Tags,
  country: string | undefined,
  vehicle: SpeedVehicle,
  options: LimitOptions = {},
): RoadSpeed {
  const legal = legalLimit(tags, country, vehicle, options);
  const likely = likelySpeed(tags, legal);
  const print = (kmh: number) => saySpeed(legal.rule, kmh);
  const law = legal.kmh === undefined ? 'No limit' : `Limit ${print(legal.kmh)}`;
  return {
    kmh: likely.kmh,
    ...given({ legalKmh: legal.kmh }),
    mapped: legal.mapped,
    why: { law, because: legal.why, likely: `${print(likely.kmh)}: ${likely.held}` },
    ...given({ general: legal.general }),
    notes: legal.notes,
  };
}

const known = new WeakMap<SpeedVehicle, WeakMap<Tags, Map<string, RoadSpeed>>>();

/** The same, remembered for as long as vehicle and tags are: ways past a bar are timed on the same roads again and again. */
export function speedRemembered(
  tags: Tags,
  country: string | undefined,
  vehicle: SpeedVehicle,
  options: LimitOptions,
): RoadSpeed {
  const ofVehicle = known.get(vehicle) ?? new WeakMap<Tags, Map<string, RoadSpeed>>();
  known.set(vehicle, ofVehicle);
  const ofTags = ofVehicle.get(tags) ?? new Map<string, RoadSpeed>();
  ofVehicle.set(tags, ofTags);
  const key = `${country} ${options.forward} ${options.urban}`;
  const there = ofTags.get(key);
  if (there !== undefined) return there;
  const made = speedFor(tags, country, vehicle, options);
  ofTags.set(key, made);
  return made;
}
