import type { Span } from '../match/drive.ts';
import { type Oneway, onewayFor } from '../tags/oneway.ts';
import { drivenWays, type Place } from './places.ts';
import type { RuleInput } from './rule.ts';

/** A way driven against its mapped direction, or where the direction is not settled. */
export interface WrongWay {
  readonly place: Place;
  readonly oneway: Oneway;
  /** the match is in doubt here: another road may be the driven one */
  readonly doubtful: boolean;
}

/** Every driven way whose one-way tags do not plainly allow the driven direction. */
export function wrongWays(input: RuleInput): WrongWay[] {
  const found: WrongWay[] = [];
  for (const place of drivenWays(input.drive, input.roads)) {
    const oneway = onewayFor(place.tags, place.forward);
    if (oneway.allowed === 'yes') continue;
    found.push({ place, oneway, doubtful: input.drive.doubtful.some((span) => covers(span, place)) });
  }
  return found;
}

/** Spans and stretches are cut at the same places; this is for rounding. */
const ROUNDING_M = 1;

function covers(span: Span, place: Place): boolean {
  return span.fromM <= place.fromM + ROUNDING_M && span.toM >= place.toM - ROUNDING_M;
}
