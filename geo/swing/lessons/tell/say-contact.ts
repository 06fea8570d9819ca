import { shortIn, type Units } from '../../../units/in-units.ts';
import type { Contact } from '../read/contact.ts';
import { isTouching } from '../read/judge.ts';
import type { OverLine } from '../read/over-line.ts';
import type { Reading } from '../read/read-scene.ts';
import { sayWay } from './lengths.ts';
import { sayFixture, sayPart } from './say-part.ts';

const UNTOUCHED = 'Nothing is touched.';

/** What is touched first and when, or that nothing is. */
export function sayContact(contact: Contact | undefined, units: Units): string {
  if (!contact) return UNTOUCHED;
  return `${sayWay(units, contact.travelM)} from the start the ${sayPart(contact.part)} touches ${sayFixture(contact.fixture)}.`;
}

/** A kerb or painted line that a corner passes. */
export function sayOver({ part, fixture, overM }: OverLine, units: Units): string {
  const does = fixture.kind === 'lane line' ? 'crosses' : 'hangs over';
  return `The ${sayPart(part)} ${does} ${sayFixture(fixture)} by ${shortIn(units, overM, 'up')}.`;
}

/** Steered by hand: what is touched now and how to come off it, or that nothing is. */
export function sayByHand(reading: Reading): string {
  return isTouching(reading)
    ? `It touches ${sayNearest(reading)}. Roll the other way to come off it.`
    : UNTOUCHED;
}

/** What is nearest to the vehicle. */
export function sayNearest({ nearest }: Reading): string {
  return nearest ? sayFixture(nearest) : 'what stands there';
}
