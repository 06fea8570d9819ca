import type { Span } from '../../drive/drive.ts';
import { type OnewayThen, onewayThen } from '../../tags/oneway.ts';
import { contextsAt } from '../conditions.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';

/** A way driven against its mapped direction, or where the direction is not settled. */
export interface WrongWay {
  readonly place: Place;
  readonly oneway: OnewayThen;
  /** most of it is in doubt or filled in: another road may be the driven one */
  readonly doubtful: boolean;
}

/** Every driven way whose one-way tags do not plainly allow the driven direction. */
export function wrongWays(input: RuleInput): WrongWay[] {
  const found: WrongWay[] = [];
  for (const place of drivenWays(input.drive, input.roads)) {
    const oneway = onewayThen(place, () => contextsAt(input, place, 'through'));
    if (oneway.allowed === 'yes') continue;
    const { doubtful, guessed } = input.drive;
    const most = (place.toM - place.fromM) / 2;
    found.push({
      place,
      oneway,
      doubtful: overlapM(doubtful, place) > most || overlapM(guessed, place) > most,
    });
  }
  return found;
}

/** Metres of the place that lie in the spans. */
function overlapM(spans: readonly Span[], place: Place): number {
  let sum = 0;
  for (const span of spans)
    sum += Math.max(0, Math.min(span.toM, place.toM) - Math.max(span.fromM, place.fromM));
  return sum;
}
