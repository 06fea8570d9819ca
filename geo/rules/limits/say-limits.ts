import type { LaneLimit } from '../../tags/lanes.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { OpenCondition, Tagged } from '../../tags/resolve.ts';
import type { SignQuantity } from '../../tags/sign-codes.ts';
import { printKg, printLimitM, printSizeM } from '../../units/print.ts';
import { NOTE_TEXT, type Reading } from '../../units/reading.ts';
import { lowerFirst } from '../../units/text.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { Envelope } from '../../vehicle/envelope.ts';
import type { Words } from '../words.ts';
import type { WordDoubt } from './height-word.ts';

// The sentences on limits whatever they limit; those on sizes and masses stand in say-sizes.ts and say-masses.ts.

/** `"maxwidth=wide": cannot be read as a limit (…).` @param why the end of the sentence */
export function sayDoubt({ key, text }: Tagged, why: string): string {
  return `"${key}=${text}": ${why}.`;
}

/** Why a key tells nothing. */
export function whyStrange({ meant }: LimitClaim): string {
  return meant === undefined
    ? 'a limit that is not understood'
    : `no limit has that name; ${meant} may be meant`;
}

/** Why a value tells nothing. */
export function whyUnreadable({ reason }: Extract<Reading, { reason: string }>): string {
  return `cannot be read as a limit (${reason})`;
}

/** Why "below default" tells nothing. */
export const WHY_BELOW_DEFAULT = 'lower than the general rule, and nobody mapped by how much';

/** Why lanes tell nothing. */
export function whyLanesUnreadable({ boundLanes }: LaneLimit): string {
  return `cannot be read on ${boundLanes}`;
}

/** Why a word in place of a height does not do. */
export function whyWord(doubt: WordDoubt): string {
  if (doubt.of === 'no public road') return 'there is no sign, which proves nothing off the public road';
  const than = `the vehicle needs more than the ${printLimitM(doubt.grantsM)} that stand for it here`;
  return doubt.word === 'default'
    ? `only the general rule holds, and ${than}`
    : `there is no sign, and ${than}`;
}

/** Why a condition without any figure that binds is told. */
export function whyOpen({ why, unreadable }: OpenCondition<LimitClaim>): string {
  return unreadable ? why : `holds under a condition that is not settled: ${why}`;
}

/** " Whether it binds is open: it depends on the time of passing (Monday to Friday 07:00 to 19:00)." */
export function sayOpen({ tag, why, understood, unreadable }: OpenCondition<Tagged>): string {
  if (understood) return ` Whether it binds is open: ${why}.`;
  const text = `"${tag.key}=${tag.text}"`;
  return unreadable ? ` ${text} ${why}.` : ` ${text} may change that: ${why}.`;
}

/** What was read leniently, '' where nothing was. */
export function sayReading(reading: Reading): string {
  if ('reason' in reading || reading.notes.length === 0) return '';
  return ` (Read from the map with care: ${reading.notes.map((note) => NOTE_TEXT[note]).join(', ')}.)`;
}

/** Some lanes let the vehicle by. @param say of the worst of the others */
export function saySomeLanes(lanes: LaneLimit, say: string): Words {
  return {
    say: `On ${lanes.boundLanes} only: ${lowerFirst(say)}`,
    advice: `Do NOT take ${lanes.boundLanes}: keep to ${lanes.freeAt.length > 1 ? `one of ${lanes.freeLanes}` : lanes.freeLanes}.`,
  };
}

/** The same where the drive leaves the road by a lane that does not. */
export function sayLeavesByLane(lanes: LaneLimit, say: string): Words {
  return {
    say: `${saySomeLanes(lanes, say).say} The drive turns off on that side.`,
    advice: 'Look for the sign, and whether another lane leads the same way.',
  };
}

/** No lane lets the vehicle by. @param say of the lane that leaves most */
export function sayAllLanes(lanes: LaneLimit, say: string, others: 'alike' | 'tighter'): string {
  return `On ${lanes.boundLanes}: ${lowerFirst(say)}${others === 'tighter' ? ' Other lanes are tighter.' : ''}`;
}

/** A sign alone. @param quantity undefined: a bare figure @param needs as `sayNeeds` */
export function saySign({ key, text }: Tagged, quantity: SignQuantity | undefined, needs: string): Words {
  const what = quantity === undefined ? 'limit on sizes' : `${quantity} limit`;
  return {
    say: `${key.startsWith('hazard') ? 'A hazard' : 'A sign'} is mapped ("${key}=${text}") and no ${what} of the road itself.`,
    advice: `Read the sign before you drive on; the vehicle ${needs}.`,
  };
}

/** What the vehicle asks of a road: `needs 3.10 m (10'3") of height`. */
export function sayNeeds(
  quantity: SignQuantity,
  { envelope, card }: { readonly envelope: Envelope; readonly card: VehicleCard },
): string {
  switch (quantity) {
    case 'height':
      return `needs ${printSizeM(envelope.heightM)} of height`;
    case 'width':
      return `is ${printSizeM(envelope.mirrorsWidthM)} over its mirrors`;
    case 'length':
      return `is ${printSizeM(envelope.lengthM)} long`;
    case 'mass':
      return `is plated at ${printKg(card.grossKg)}`;
    case 'axle':
      return `has axle plates of ${printKg(card.axleKg.front)} front, ${printKg(card.axleKg.rear)} rear`;
  }
}
