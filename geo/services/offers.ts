import type { Tags } from '../roads/roads.ts';
import { saysYes } from '../tags/says-yes.ts';
import type { ServiceKind } from './kinds.ts';
import { type Offer, pointKind } from './point.ts';

const DUMP = 'sanitary_dump_station';

/** What can be had at a place by its tags; a missing key is no no: it is not mapped (OpenStreetMap wiki). */
export function offersOf(tags: Tags): Offer[] {
  const kind = pointKind(tags);
  const offers = new Map<ServiceKind, Offer['is']>();
  const offer = (of: ServiceKind, is: Offer['is'] | undefined) => {
    if (is !== undefined && offers.get(of) !== 'yes') offers.set(of, is);
  };
  if (kind === 'waste station' || saysYes(tags[DUMP])) {
    offer('cassette', anyOf(tags, [`${DUMP}:basin`, `${DUMP}:chemical_toilet`]));
    offer('grey water', said(tags, `${DUMP}:grey_water`));
  } else if (kind === 'site' && tags[DUMP] === undefined) {
    offer('cassette', 'unknown');
    offer('grey water', 'unknown');
  }
  if (kind === 'water point') offer('fresh water', tags['drinking_water'] === 'no' ? undefined : 'yes');
  // a tap: whether a hose fits it nobody maps
  else if (kind === 'drinking water') offer('fresh water', 'unknown');
  else if (kind === 'site' || kind === 'waste station')
    offer('fresh water', anyOf(tags, ['water_point', 'drinking_water']));
  if (kind === 'filling station') {
    offer('fuel', dieselAt(tags));
    offer('LPG', said(tags, 'fuel:lpg'));
    offer('AdBlue', anyOf(tags, ['fuel:adblue', 'fuel:adblue:canister']));
    if (saysYes(tags['water_point'])) offer('fresh water', 'yes');
  }
  return [...offers].map(([of, is]) => ({ kind: of, is }));
}

const DIESEL = /^fuel:(\w+_)?diesel$/i;
/** Sold beside what the engine burns: who maps these alone has not listed the fuels. */
const BESIDE_FUEL = /^fuel:(lpg|adblue)/;

/** Motorhomes burn diesel, by and large: a station without a list of fuels has it, a list may leave it out. */
function dieselAt(tags: Tags): Offer['is'] | undefined {
  const sold = Object.keys(tags).filter((key) => key.startsWith('fuel:') && saysYes(tags[key]));
  if (sold.some((key) => DIESEL.test(key))) return 'yes';
  if (tags['fuel:diesel'] === 'no') return undefined;
  return sold.some((key) => !BESIDE_FUEL.test(key)) ? 'unknown' : 'yes';
}

function said(tags: Tags, key: string): Offer['is'] | undefined {
  const text = tags[key];
  if (text === undefined || text === '') return 'unknown';
  return saysYes(text) ? 'yes' : undefined;
}

/** Yes where one says so, no where all say no, else not mapped. */
function anyOf(tags: Tags, keys: readonly string[]): Offer['is'] | undefined {
  const answers = keys.map((key) => said(tags, key));
  return answers.find((is) => is === 'yes') ?? answers.find((is) => is === 'unknown');
}
