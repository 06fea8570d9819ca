import { limitOnLanes } from '../../tags/lanes.ts';
import { type LimitClaim, readQuantity } from '../../tags/limits.ts';
import { NOTE_TEXT, type Reading } from '../../units/reading.ts';
import type { Place } from '../places.ts';
import type { Judged, LimitRule } from './limit-rule.ts';

/** What one value of a limit means for the vehicle. */
export type Outcome =
  | { readonly kind: 'free' }
  | {
      readonly kind: 'held';
      readonly judged: Judged;
      readonly value: number;
      readonly asMapped: string;
      /** other lanes let the vehicle by */
      readonly lane: boolean;
    }
  | { readonly kind: 'doubt'; readonly of: DoubtKind; readonly why: string };

export type DoubtKind = 'no figure' | 'not believed' | 'unreadable' | 'not understood';

const FREE: Outcome = { kind: 'free' };

/**
 * Judges one value.
 * @param text the value, `a|b` when the claim is given lane by lane
 * @param base the value of the key without `:lanes`, for empty lanes
 */
export function outcomeOf(
  rule: LimitRule,
  place: Place,
  claim: LimitClaim,
  text: string,
  base: string | undefined,
): Outcome {
  if (claim.lanes) return onLanes(rule, place, claim, text, base);
  const reading = readQuantity(text.trim(), claim.quantity);
  const outcome = ofReading(rule, place, claim, reading, text);
  if (outcome.kind !== 'held') return outcome;
  return { ...outcome, judged: { ...outcome.judged, say: outcome.judged.say + noteText(reading) } };
}

function ofReading(
  rule: LimitRule,
  place: Place,
  claim: LimitClaim,
  reading: Reading,
  text: string,
): Outcome {
  if (reading.kind === 'value') {
    const { value } = reading;
    const why = rule.disbelieve?.(value);
    if (why !== undefined) return { kind: 'doubt', of: 'not believed', why };
    const judged = rule.judge(claim, value, place);
    return judged === undefined ? FREE : { kind: 'held', judged, value, asMapped: text, lane: false };
  }
  const why = reasonToDoubt(rule, place, reading);
  return why === undefined
    ? FREE
    : { kind: 'doubt', of: reading.kind === 'unreadable' ? 'unreadable' : 'no figure', why };
}

function reasonToDoubt(
  rule: LimitRule,
  place: Place,
  reading: Exclude<Reading, { kind: 'value' }>,
): string | undefined {
  if (reading.kind === 'unreadable') return `cannot be read as a limit (${reading.reason})`;
  if (reading.kind === 'below_default') return 'lower than the general rule, and nobody mapped by how much';
  return rule.judgeWord?.(reading.kind, place);
}

function noteText(reading: Reading): string {
  if (reading.kind === 'unreadable' || reading.notes.length === 0) return '';
  return ` (Read from the map with care: ${reading.notes.map((note) => NOTE_TEXT[note]).join(', ')}.)`;
}

/**
 * The lane that leaves most decides: the vehicle can keep to it. Where one is free and another is not, it is a
 * tight that names the lane; a lane nobody can read counts as none to keep to.
 */
function onLanes(
  rule: LimitRule,
  place: Place,
  claim: LimitClaim,
  text: string,
  base: string | undefined,
): Outcome {
  const held: Extract<Outcome, { kind: 'held' }>[] = [];
  const lanes = limitOnLanes(text, base, (value) => {
    const outcome = outcomeOf(rule, place, { ...claim, lanes: false }, value, undefined);
    if (outcome.kind === 'held') held.push(outcome);
    return outcome.kind === 'free' ? 'free' : outcome.kind === 'held' ? 'binds' : 'unreadable';
  });
  if (lanes.bound === 'none') return FREE;
  const unreadable = lanes.lanes.includes('unreadable');
  const worst = extreme(held, (a, b) => a.judged.spare < b.judged.spare);
  const best = extreme(held, (a, b) => a.judged.spare > b.judged.spare);
  if (worst === undefined || best === undefined || (unreadable && lanes.bound === 'all'))
    return { kind: 'doubt', of: 'unreadable', why: `cannot be read on ${lanes.boundLanes}` };
  if (lanes.bound === 'some') {
    const keep = `Keep to ${oneOf(lanes.freeLanes)}.`;
    return {
      ...worst,
      lane: true,
      judged: {
        ...worst.judged,
        level: 'tight',
        say: `On ${lanes.boundLanes} only: ${lowerFirst(worst.judged.say)}`,
        advice: keep,
      },
    };
  }
  const differ = worst.judged.level !== best.judged.level;
  const say = `On ${lanes.boundLanes}: ${lowerFirst(best.judged.say)}`;
  return { ...best, judged: { ...best.judged, say: differ ? `${say} Other lanes are tighter.` : say } };
}

function extreme<T>(all: readonly T[], before: (a: T, b: T) => boolean): T | undefined {
  return all.reduce<T | undefined>(
    (found, each) => (found === undefined || before(each, found) ? each : found),
    undefined,
  );
}

function oneOf(lanes: string): string {
  return lanes.startsWith('lanes ') ? `one of ${lanes}` : lanes;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
