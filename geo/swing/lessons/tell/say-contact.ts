import { printCm } from '../../../units/print.ts';
import type { Contact } from '../read/contact.ts';
import { isTouching } from '../read/judge.ts';
import type { OverLine } from '../read/over-line.ts';
import type { Reading } from '../read/read-scene.ts';
import { sayMetres } from './lengths.ts';
import { sayFixture, sayPart } from './say-part.ts';

/** What is touched first and when, or that nothing is. */
export function sayContact(contact: Contact | undefined): string {
  if (!contact) return 'Nothing is touched.';
  return `After ${sayMetres(contact.travelM)} the ${sayPart(contact.part)} touches ${sayFixture(contact.fixture)}.`;
}

/** A kerb or painted line that a corner passes. */
export function sayOver({ part, fixture, overM }: OverLine): string {
  const does = fixture.kind === 'lane line' ? 'crosses' : 'hangs over';
  return `The ${sayPart(part)} ${does} ${sayFixture(fixture)} by ${printCm(overM, 'up')}.`;
}

/** Steered by hand: what is touched now and how to come off it, or that nothing is. */
export function sayByHand(reading: Reading): string {
  return isTouching(reading)
    ? `It touches ${sayNearest(reading)}. Roll the other way to come off it.`
    : sayContact(undefined);
}

/** What is nearest to the vehicle. */
export function sayNearest({ nearest }: Reading): string {
  return nearest ? sayFixture(nearest) : 'what stands there';
}
