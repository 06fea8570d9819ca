import { alpha2 } from '../../country/country-of.ts';
import { oncePerDrive } from '../../drive/once-per-drive.ts';
import type { Tags } from '../../roads/roads.ts';
import type { Quantity } from '../../tags/limit-key.ts';
import { limitClaims } from '../../tags/limits.ts';
import type { SignQuantity } from '../../tags/sign-codes.ts';
import { type SignLimit, signLimits } from '../../tags/sign-limits.ts';
import type { Draft } from '../finding.ts';
import { goodsSignsAt } from '../goods-signs.ts';
import { drivenWays, limitedPlaces, type Place, passedNodes } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { sayNeeds, saySign } from './say-limits.ts';

/** A sign on a node stands a little before or beside what it limits. Metres. */
const BESIDE_M = 15;
const AHEAD_M = 200;

/** Any of these on the road says what the sign says. */
const CLAIMS: Readonly<Record<SignQuantity, readonly Quantity[]>> = {
  height: ['height'],
  width: ['width'],
  length: ['length'],
  mass: ['mass', 'plateMass', 'unladenMass'],
  axle: ['axle', 'bogie'],
};

/**
 * Limits that stand in `traffic_sign` or `hazard` alone: unknown, unless the figure read from it leaves the vehicle
 * free. A bare figure in metres is told with the heights.
 */
export function signDrafts(input: RuleInput, subject: SignQuantity): Draft[] {
  return signedPlaces(input.drive, input.roads).flatMap((place) => draftOf(input, subject, place));
}

const signedPlaces = oncePerDrive((drive, roads) =>
  [...drivenWays(drive, roads), ...passedNodes(drive, roads)].filter(
    (place) => mayCarrySign(place.tags) && (place.type !== 'node' || !facesAway(place)),
  ),
);

function draftOf(input: RuleInput, subject: SignQuantity, place: Place): Draft[] {
  const country = input.along.countryAt(place.fromM);
  const signs = signLimits(place, country === undefined ? undefined : alpha2(country));
  return signs.flatMap(({ key, text, limits }): Draft[] => {
    const open = limits.find(
      (limit) => (limit.quantity ?? 'height') === subject && isOpen(input, place, limit),
    );
    if (open === undefined) return [];
    return [
      {
        subject,
        kind: 'sign',
        level: 'unknown',
        wants: 'sign',
        run: runOf(place),
        tags: { [key]: text },
        ...saySign({ key, text }, open.quantity, sayNeeds(subject, input)),
        aspect: key,
      },
    ];
  });
}

function mayCarrySign(tags: Tags): boolean {
  for (const key in tags) if (key.startsWith('traffic_sign') || key.startsWith('hazard')) return true;
  return false;
}

/** A sign mapped for the traffic coming towards us. */
function facesAway({ tags, forward }: Place): boolean {
  const direction = tags['direction'] ?? tags['traffic_sign:direction'];
  return direction === (forward ? 'backward' : 'forward');
}

function isOpen(input: RuleInput, place: Place, limit: SignLimit): boolean {
  if (limit.goods && goodsSignsAt(input, place.fromM) === undefined) return false;
  if (leavesFree(input, limit)) return false;
  const quantities =
    limit.quantity === undefined
      ? [...CLAIMS.height, ...CLAIMS.width, ...CLAIMS.length]
      : CLAIMS[limit.quantity];
  return !limitedPlaces(input.drive, input.roads).some(
    (other) => isWhatItLimits(place, other) && limitClaims(other, quantities).length > 0,
  );
}

function isWhatItLimits(sign: Place, other: Place): boolean {
  if (sign.type === 'way' && other.type === 'way') return sign.index === other.index;
  const aheadM = sign.type === 'node' ? AHEAD_M : 0;
  return other.toM >= sign.fromM - BESIDE_M && other.fromM <= sign.toM + BESIDE_M + aheadM;
}

function leavesFree({ envelope, margins, load, card }: RuleInput, { quantity, value }: SignLimit): boolean {
  if (value === undefined) return false;
  switch (quantity) {
    case undefined:
      return value >= envelope.lengthM;
    case 'height':
      return value >= envelope.heightM + margins.heightM;
    case 'width':
      return value >= envelope.mirrorsWidthM;
    case 'length':
      return value >= envelope.lengthM;
    case 'mass':
      return value >= Math.max(envelope.grossKg, load?.grossKg ?? 0);
    case 'axle':
      return value >= Math.max(card.axleKg.front, card.axleKg.rear, load?.frontKg ?? 0, load?.rearKg ?? 0);
  }
}
