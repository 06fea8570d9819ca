import { shortIn, type Units } from '../../../units/in-units.ts';
import { isTouching, type Judged } from '../read/judge.ts';
import type { Reading } from '../read/read-scene.ts';
import { sayContact, sayNearest } from './say-contact.ts';

/** What decides a lesson, for the ear. */
export function announceLesson({ decides, contact }: Judged, units: Units): string {
  const spare = decides.kind === 'gap' ? `${spareIn(units, decides.spareM)}. ` : '';
  return `${spare}${sayContact(contact)}`;
}

/** Steered by hand, for the ear. */
export function announceByHand(reading: Reading | undefined): string {
  if (reading && isTouching(reading)) return `Stopped: it touches ${sayNearest(reading)}.`;
  return 'The wheel is in your hand.';
}

/** `12 cm spare`, `3 cm over`. */
export function spareIn(units: Units, spareM: number): string {
  return `${spareSizeIn(units, spareM)} ${spareWord(spareM)}`;
}

/** The size of what is left or lacking, rounded against the driver. */
export function spareSizeIn(units: Units, spareM: number): string {
  return shortIn(units, Math.abs(spareM), spareM < 0 ? 'up' : 'down');
}

export function spareWord(spareM: number): 'spare' | 'over' {
  return spareM < 0 ? 'over' : 'spare';
}
