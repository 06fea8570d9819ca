import type { Units } from '../../../units/in-units.ts';
import { type ShownSum, shortSumIn } from '../../../units/sum.ts';
import { isTouching, type Judged } from '../read/judge.ts';
import type { Reading } from '../read/read-scene.ts';
import { sayContact, sayNearest } from './say-contact.ts';

/** What decides a lesson, for the ear. */
export function announceLesson({ decides, contact }: Judged, units: Units): string {
  const spare = decides.kind === 'gap' ? `${spareIn(units, decides)}. ` : '';
  return `${spare}${sayContact(contact, units)}`;
}

/** Steered by hand, for the ear. */
export function announceByHand(reading: Reading | undefined): string {
  if (reading && isTouching(reading)) return `Stopped: it touches ${sayNearest(reading)}.`;
  return 'The wheel is in your hand.';
}

/** A gap, and the swing it is held against. Metres. */
interface GapDecides {
  readonly gapM: number;
  readonly swingM: number;
  readonly spareM: number;
}

/** `12 cm spare`, `3 cm over`. */
export function spareIn(units: Units, decides: GapDecides): string {
  return `${gapSumIn(units, decides).short} ${spareWord(decides.spareM)}`;
}

/** gap − swing = spare, as it is shown. */
export function gapSumIn(units: Units, { gapM, swingM }: GapDecides): ShownSum {
  return shortSumIn(units, { limit: gapM, needed: swingM });
}

export function spareWord(spareM: number): 'spare' | 'over' {
  return spareM < 0 ? 'over' : 'spare';
}
