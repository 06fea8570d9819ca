import type { Units } from '../../../units/in-units.ts';
import { isTouching, type Judged } from '../read/judge.ts';
import type { Reading } from '../read/read-scene.ts';
import { sayNearest } from './say-contact.ts';
import { sayDecides, sayOutcome } from './say-decides.ts';

/** What decides a lesson, for the ear. */
export function announceLesson(judged: Judged, end: 'tail' | 'nose', units: Units): string {
  const { number, says } = sayDecides(judged, end, units);
  const decides = judged.decides.kind === 'touch' ? [] : [`${number} ${says}.`];
  return [...decides, ...sayOutcome(judged, end, units)].join(' ');
}

/** Steered by hand, for the ear. */
export function announceByHand(reading: Reading | undefined): string {
  if (reading && isTouching(reading)) return `Stopped: it touches ${sayNearest(reading)}.`;
  return 'The wheel is in your hand.';
}
