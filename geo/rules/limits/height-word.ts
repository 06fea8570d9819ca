import type { CountryRule } from '../../country/rule.ts';
import type { Tags } from '../../roads/roads.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import { printMetres } from '../../units/print.ts';
import type { Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';

/** Words that stand in the place of a height. */
export type HeightWord = 'none' | 'default' | 'unsigned';

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

/** What has to be said where a word stands in place of a height on the open road; undefined: nothing. */
export function doubtOfWord(
  { along, envelope: { heightM } }: RuleInput,
  kind: HeightWord,
  place: Place,
): string | undefined {
  if (kind === 'none') return undefined;
  const grants = grantedM(along.ruleAt(place.fromM), kind, place.wayTags);
  const taller = heightM > grants;
  const than = `the vehicle needs more than the ${printMetres(grants)} that stand for it here`;
  if (kind === 'default') return taller ? `only the general rule holds, and ${than}` : undefined;
  if (taller) return `there is no sign, and ${than}`;
  // signs are a duty on public roads; on private ground their absence says nothing
  return isSiteRoad(place.wayTags) ? 'there is no sign, which proves nothing off the public road' : undefined;
}

/** Whether a word will do under a roof: the country promises a public road without a sign enough for us. */
export function wordWillDo({ along, envelope: { heightM } }: RuleInput, place: Place): boolean {
  if (isSiteRoad(place.wayTags)) return false;
  const { leastM, motorwayLeastM } = along.ruleAt(place.fromM).unsignedHeight.value;
  const promised = place.wayTags['highway'] === 'motorway' ? (motorwayLeastM ?? leastM) : leastM;
  return promised !== undefined && heightM <= promised;
}
