import { type LimitClaim, readQuantity } from '../../tags/limits.ts';
import type { Reading } from '../../units/reading.ts';
import { beforeFirst } from '../../units/text.ts';
import { outcomeOnLanes } from './limit-on-lanes.ts';
import { type Asked, type Doubt, FREE, type Outcome, type Valued } from './limit-rule.ts';
import { sayReading, WHY_BELOW_DEFAULT, whyUnreadable } from './say-limits.ts';

/** Judges one value. */
export function outcomeOf(asked: Asked, { claim, text, base }: Valued): Outcome {
  if (claim.lanes)
    return outcomeOnLanes(asked, { claim, text, base }, (value) => outcomeOfFigure(asked, claim, value));
  return outcomeOfFigure(asked, claim, text);
}

function outcomeOfFigure(asked: Asked, claim: LimitClaim, text: string): Outcome {
  const reading = readQuantity(text.trim(), claim.quantity);
  const { rule, place } = asked;
  if (reading.kind !== 'value') {
    const doubt = doubtOf(asked, reading);
    return doubt === undefined ? FREE : { kind: 'doubt', doubt };
  }
  const { value } = reading;
  const judged = rule.judge(claim, value, place);
  if (judged === undefined) return FREE;
  return {
    kind: 'held',
    judged: { ...judged, say: judged.say + sayReading(reading) },
    value,
    asMapped: text,
  };
}

function doubtOf({ rule, place }: Asked, reading: Exclude<Reading, { kind: 'value' }>): Doubt | undefined {
  if (reading.kind === 'unreadable') return { of: 'unreadable', why: whyUnreadable(reading), wants: 'sign' };
  if (reading.kind === 'not believed') return { of: 'not believed', why: reading.reason, wants: 'sign' };
  if (reading.kind === 'below_default') return { of: 'no figure', why: WHY_BELOW_DEFAULT, wants: 'sign' };
  return rule.judgeWord?.(reading.kind, place);
}

/**
 * Whether each figure in a text nobody can take apart leaves the vehicle free, so that no meaning of it could stop it.
 * `a|b` are lanes, `a @ b; c @ d` clauses.
 */
export function isFree(asked: Asked, claim: LimitClaim): boolean {
  if (claim.quantity === 'unknown') return false;
  return claim.text.split(/\||;(?![^()]*\))/).every((part) => {
    const figure = beforeFirst(part, '@').trim();
    if (figure === '') return part === '';
    const reading = readQuantity(figure, claim.quantity);
    if (reading.kind !== 'value') return reading.kind === 'none';
    return outcomeOfFigure(asked, claim, figure).kind === 'free';
  });
}
