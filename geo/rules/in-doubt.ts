import type { Drive, Span } from '../drive/drive.ts';
import type { Place } from './places.ts';

/** Whether most of a driven place is in doubt or filled in: another road may be the driven one. */
export function isInDoubt({ doubtful, guessed }: Drive, place: Place): boolean {
  const most = (place.toM - place.fromM) / 2;
  return overlapM(doubtful, place) > most || overlapM(guessed, place) > most;
}

/** Metres of the place that lie in the spans. */
function overlapM(spans: readonly Span[], place: Place): number {
  let sum = 0;
  for (const span of spans)
    sum += Math.max(0, Math.min(span.toM, place.toM) - Math.max(span.fromM, place.fromM));
  return sum;
}
