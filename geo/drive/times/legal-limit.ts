import { FROM_MEMORY, type Source } from '../../country/cited.ts';
import { lookUp } from '../../country/look-up.ts';
import type { CountryRule, Limit, OpenRoadLimits, SpeedClass } from '../../country/rule.ts';
import { ruleFor } from '../../country/table.ts';
import { given } from '../../given.ts';
import type { Tags } from '../../roads/roads.ts';
import { type Direction, directionOf } from '../../tags/driven.ts';
import { GOODS_SIGNS_FROM_KG } from '../../tags/modes.ts';
import { withoutSlip } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import { readSpeed, type SpeedRead } from './read-speed.ts';
import { type RoadSetting, roadSetting } from './road-setting.ts';
import { bandFor, type SpeedVehicle } from './speed-band.ts';

export interface LimitOptions {
  /** whether the road lies in a town, where the caller knows */
  readonly urban?: boolean;
  /** along the way's drawn order; absent: keys for one direction are left alone */
  readonly forward?: boolean;
}

/** The law's speed for one vehicle on one road. */
export interface LegalLimit {
  /** km/h; absent where no limit stands at all */
  readonly kmh?: number;
  readonly why: string;
  /** the general rule that holds, and whose word that is; absent where the limit is mapped */
  readonly general?: { readonly what: string; readonly source: Source };
  /** the limit is mapped on this road, not taken from the table */
  readonly mapped: boolean;
  readonly setting: RoadSetting;
  readonly rule: CountryRule;
  /** sentences about what was assumed or could not be read */
  readonly notes: readonly string[];
}

/**
 * The legal speed: the mapped limit for this vehicle and direction, or the country's general one for the kind
 * of road; lowered to what the vehicle's mass allows. `maxspeed:conditional` is judged elsewhere.
 */
export function legalLimit(
  tags: Tags,
  country: string | undefined,
  vehicle: SpeedVehicle,
  options: LimitOptions = {},
): LegalLimit {
  const setting = roadSetting(tags, options);
  const found = ruleFor(countryFor(country, setting.country));
  const { rule } = found;
  const { band, note: bandNote } = bandFor(rule, vehicle);
  const notes = [found.note, bandNote].filter((note) => note !== undefined);
  const general = generalLimit(rule, setting, textOf(tags, 'highway'));
  // the first band is everybody's general limit; only heavier bands are a limit of the vehicle
  const cap = band.overKg > 0 ? pick(band.limits.value, setting) : 'none';

  const { forward } = options;
  const driven = forward === undefined ? undefined : directionOf({ forward });
  const sign = signedLimit(tags, driven);
  const read = sign && signRead(sign.read, rule);
  if (sign && read === undefined && sign.read.kind !== 'implied')
    notes.push(`${sign.key}=${sign.text} gives no figure: the general limit is used.`);
  const mapped = read !== undefined;
  let limit = read ?? general.limit;
  let why = mapped && sign ? `${sign.key}=${sign.text}` : `${general.what} (${setting.because})`;
  let from: LegalLimit['general'] = mapped ? undefined : general;

  const goods = goodsLimit({ tags, rule, vehicle, driven });
  if (goods && lower(goods.limit, limit)) {
    limit = goods.limit;
    why = `${goods.key}, which binds a motorhome over 3.5 t here`;
    from = { what: 'signs for goods vehicles', source: rule.goodsSigns.source };
  }
  if (lower(cap, limit)) {
    limit = cap;
    const what = `general limit for over ${band.overKg / 1000} t ${rule.bandsBy.value}`;
    why = `${what} (${setting.because})`;
    from = { what, source: band.limits.source };
  }
  const kmh = limit === 'none' ? {} : { kmh: limit };
  return { ...kmh, why, ...given({ general: from }), mapped, setting, rule, notes };
}

/** Border data are coarse, so a country that the tags name wins; but a part of it that the place tells is kept. */
function countryFor(place: string | undefined, tagged: string | undefined): string | undefined {
  return tagged === undefined || place?.startsWith(tagged) ? place : tagged;
}

function generalLimit(
  rule: CountryRule,
  setting: RoadSetting,
  highway: string,
): { limit: Limit; what: string; source: Source } {
  if (setting.livingStreet) {
    const { value, source } = rule.livingStreetKmh;
    return { limit: value, what: 'living street', source };
  }
  if (setting.urban) return { limit: rule.urbanKmh.value, what: 'town limit', source: rule.urbanKmh.source };
  const byHighway = lookUp(rule.ruralByHighway?.value ?? {}, withoutSlip(highway));
  if (byHighway !== undefined && setting.speedClass === 'rural')
    return {
      limit: byHighway,
      what: `general limit, ${highway}`,
      source: rule.ruralByHighway?.source ?? FROM_MEMORY,
    };
  const { value, source } = rule.bands[0].limits;
  return {
    limit: pick(value, setting),
    what: `general limit, ${WORDS[setting.speedClass]}`,
    source,
  };
}

const WORDS: Readonly<Record<SpeedClass, string>> = {
  rural: 'single carriageway',
  dual: 'dual carriageway',
  expressway: 'road for motor traffic only',
  dualExpressway: 'dual carriageway for motor traffic only',
  motorway: 'motorway',
};

function pick(limits: OpenRoadLimits, { speedClass }: RoadSetting): Limit {
  return limits[speedClass];
}

interface Signed {
  readonly key: string;
  readonly text: string;
  readonly read: SpeedRead;
}

function signedLimit(tags: Tags, driven: Direction | undefined): Signed | undefined {
  for (const key of SPEED_KEYS[driven ?? 'any']) {
    const text = tags[key];
    if (text !== undefined) return { key, text, read: readSpeed(text) };
  }
  // the figure may stand in the key that says where it comes from (zone:maxspeed=DE:30)
  const zone = tags['zone:maxspeed'];
  const read = zone === undefined ? undefined : readSpeed(zone);
  return zone !== undefined && read?.kind === 'kmh' ? { key: 'zone:maxspeed', text: zone, read } : undefined;
}

function signRead(read: SpeedRead, rule: CountryRule): Limit | undefined {
  if (read.kind === 'kmh') return read.kmh;
  if (read.kind === 'none') return 'none';
  return read.kind === 'walk' ? Math.min(rule.livingStreetKmh.value, 7) : undefined;
}

interface GoodsAsked {
  readonly tags: Tags;
  readonly rule: CountryRule;
  readonly vehicle: SpeedVehicle;
  readonly driven: Direction | undefined;
}

function goodsLimit({ tags, rule, vehicle, driven }: GoodsAsked) {
  if (rule.goodsSigns.value !== 'bind' || vehicle.grossKg <= GOODS_SIGNS_FROM_KG) return undefined;
  for (const key of GOODS_KEYS[driven ?? 'any']) {
    const text = tags[key];
    const read = text === undefined ? undefined : readSpeed(text);
    if (read?.kind === 'kmh') return { limit: read.kmh, key: `${key}=${text}` };
  }
  return undefined;
}

const SPEED_KEYS = keysOf(['maxspeed:motorhome', 'maxspeed:motor_vehicle', 'maxspeed']);
const GOODS_KEYS = keysOf(['maxspeed:hgv']);

/** The keys of each direction, the most telling first; `any` where the direction is not known. */
function keysOf(bases: readonly string[]): Readonly<Record<Direction | 'any', readonly string[]>> {
  const keys = (ways: readonly string[]) =>
    bases.flatMap((base) => [...ways.map((way) => `${base}:${way}`), base]);
  return {
    any: keys(['both_ways']),
    forward: keys(['forward', 'both_ways']),
    backward: keys(['backward', 'both_ways']),
  };
}

function lower(limit: Limit, than: Limit): limit is number {
  return limit !== 'none' && (than === 'none' || limit < than);
}
