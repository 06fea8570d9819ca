import type { CountryRule } from '../../country/rule.ts';
import type { Tags } from '../../roads/roads.ts';
import { isMinorRoad, isSiteRoad } from '../../tags/road-class.ts';
import type { Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';

/** Words that stand in the place of a height. */
export type HeightWord = 'none' | 'default' | 'unsigned';

/** Why a word in place of a height does not do on the open road. */
export type WordDoubt =
  | { readonly of: 'too tall for it'; readonly word: 'default' | 'unsigned'; readonly grantsM: number }
  | { readonly of: 'no public road' };

/** What an unknown country's general rule is taken to grant: the commonest legal height, from memory. */
const GRANTS_ANYWHERE_M = 4.0;

/**
 * The height that passes where no figure is signed, in the country of the place: what a road without a sign promises,
 * else the legal height of vehicles. `default` says in other words that there is no sign, so both mean one figure.
 */
function grantedM(rule: CountryRule, tags: Tags): number {
  return promisedM(rule, tags) ?? rule.legalHeightM.value ?? GRANTS_ANYWHERE_M;
}

/** What a public road of this class promises without a sign; undefined: nothing. */
export function promisedM(rule: CountryRule, tags: Tags): number | undefined {
  const { leastM, mainRoadsOnly } = rule.unsignedHeight.value;
  return mainRoadsOnly === true && isMinorRoad(tags) ? undefined : leastM;
}

/** Whether the vehicle is higher than what passes where nothing is signed: then a bridge without a figure is no small matter. */
export function isTallerThanGranted({ along, envelope: { heightM } }: RuleInput, place: Place): boolean {
  return heightM > grantedM(along.ruleAt(place.fromM), place.wayTags);
}

/** What stands against a word in place of a height on the open road; undefined: nothing. */
export function doubtOfWord(
  { along, envelope: { heightM } }: RuleInput,
  word: HeightWord,
  place: Place,
): WordDoubt | undefined {
  if (word === 'none') return undefined;
  const grantsM = grantedM(along.ruleAt(place.fromM), place.wayTags);
  if (heightM > grantsM) return { of: 'too tall for it', word, grantsM };
  // signs are a duty on public roads; on private ground their absence says nothing
  return word === 'unsigned' && isSiteRoad(place.wayTags) ? { of: 'no public road' } : undefined;
}

/** Whether a word will do under a roof: the country promises a public road without a sign enough for us. */
export function wordWillDo({ along, envelope: { heightM } }: RuleInput, place: Place): boolean {
  if (isSiteRoad(place.wayTags)) return false;
  const promised = promisedM(along.ruleAt(place.fromM), place.wayTags);
  return promised !== undefined && heightM <= promised;
}
