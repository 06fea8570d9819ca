import { limitClaims } from '../../tags/limits.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import type { Envelope } from '../../vehicle/envelope.ts';
import { promisedM } from '../limits/height-word.ts';
import { limitedPlaces, type Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import type { HeightFacts } from './say-overhead.ts';

/** Garages and passages are built for cars; nothing on a road is lower than a tall car. Metres. */
const CAR_HEIGHT_M = 1.9;

/** Whether what stands over a road without a figure could stop this vehicle. */
export function heightsMatterTo(envelope: Envelope): boolean {
  return envelope.heightM > CAR_HEIGHT_M;
}

/** The piece of road that carries a bridge's figure may be cut a little beside it, and is short. Metres. */
const BESIDE_M = 15;
const SHORT_PIECE_M = 150;

/**
 * Whether the driven direction of a place carries a statement on height that holds for every vehicle at any hour: one
 * for a lane, an hour, or by way of advice leaves the rest open.
 */
export function saysHeight(place: Place): boolean {
  return limitClaims(place, ['height']).some(
    ({ binding, basis }) => (binding === 'always' || binding === 'notUnderstood') && basis !== 'advisory',
  );
}

/**
 * Whether a height is mapped for what crosses over the drive at a distance along it: on the driven way there, on a
 * node beside it, or on a short piece beside it that has no crossing of its own.
 * @param crossingsM where anything crosses over the drive
 */
export function isHeightMapped(
  input: RuleInput,
  under: Place,
  atM: number,
  crossingsM: readonly number[],
): boolean {
  if (saysHeight(under)) return true;
  return limitedPlaces(input.drive, input.roads).some((place) => {
    if (atM < place.fromM - BESIDE_M || atM > place.toM + BESIDE_M || !saysHeight(place)) return false;
    if (place.type === 'node') return true;
    const short = place.toM - place.fromM <= SHORT_PIECE_M;
    return short && !crossingsM.some((m) => m >= place.fromM && m <= place.toM);
  });
}

/** What a sentence about a missing height tells: no sign promises something only on a public road. */
export function heightFacts(input: RuleInput, place: Place): HeightFacts {
  return {
    units: input.units,
    neededM: input.envelope.heightM,
    unsignedM: isSiteRoad(place.wayTags)
      ? undefined
      : promisedM(input.along.ruleAt(place.fromM), place.wayTags),
  };
}
