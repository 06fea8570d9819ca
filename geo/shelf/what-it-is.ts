import { foldName, type NameEntry } from './names.ts';
import { settlementRank } from './where-it-is.ts';

/** What drivers call what is mapped by words of another trade; the rest are words of everybody's. */
const WORDS: Readonly<Record<string, string>> = {
  motorway: 'motorway',
  motorway_link: 'slip road',
  trunk: 'main road',
  trunk_link: 'slip road',
  primary: 'main road',
  primary_link: 'slip road',
  secondary: 'main road',
  tertiary: 'through road',
  unclassified: 'minor road',
  residential: 'street',
  living_street: 'street',
  pedestrian: 'street for walkers',
  service: 'way to a site',
  track: 'track',
  isolated_dwelling: 'house in the country',
  locality: 'named spot',
  neighbourhood: 'part of a town',
  quarter: 'part of a town',
  suburb: 'part of a town',
  camp_site: 'campsite',
  caravan_site: 'site for motorhomes',
  fuel: 'filling station',
  halt: 'station',
};

/** What a named thing is, in plain words: town, station, main road. */
export function whatItIs({ kind, what }: Pick<NameEntry, 'kind' | 'what'>): string {
  return WORDS[what] ?? (kind === 'road' ? 'road' : what.replaceAll('_', ' '));
}

/**
 * Of names found for a text, those that it may mean: what is called just so, the one town or village of that name before
 * all else that is.
 */
export function meantBy<N extends Pick<NameEntry, 'name' | 'kind' | 'what'>>(
  found: readonly N[],
  text: string,
): N[] {
  const wanted = foldName(text);
  const exact = found.filter(({ name }) => foldName(name) === wanted);
  const settlements = exact.filter(
    ({ kind, what }) => kind === 'place' && settlementRank(what) !== undefined,
  );
  return settlements.length === 1 ? settlements : exact;
}
