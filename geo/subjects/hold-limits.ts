import type { Finding, Level, Subject } from '../report.ts';
import type { Tags } from '../roads/roads.ts';
import type { Quantity } from '../tags/limit-key.ts';
import { type LimitClaim, limitClaims, readQuantity } from '../tags/limits.ts';
import { GOODS_SIGNS_FROM_KG } from '../tags/modes.ts';
import { NOTE_TEXT, type Reading } from '../units/reading.ts';
import { type Draft, makeFindings } from './make-finding.ts';
import { limitedPlaces, type Place } from './places.ts';
import type { RuleInput } from './rule.ts';

/** What a figure means for the vehicle: undefined where it passes freely. */
export interface Judged {
  readonly level: Level;
  readonly vehicle: NonNullable<Finding['vehicle']>;
  /** limit minus vehicle, negative when over */
  readonly spare: number;
  readonly say: string;
  readonly advice: string;
}

/** How one subject holds limits against the vehicle. */
export interface LimitRule {
  readonly subject: Subject;
  readonly quantities: readonly Quantity[];
  readonly unit: 'm' | 'kg';
  /** a figure in metres or kilograms */
  judge(claim: LimitClaim, value: number, place: Place): Judged | undefined;
  /** why a figure is not to be believed */
  disbelieve?(value: number): string | undefined;
  /** what has to be said where a word stands in place of a figure; undefined: nothing */
  judgeWord?(kind: 'none' | 'default' | 'unsigned', place: Place): string | undefined;
  /** what to do where nothing is proved */
  readonly unprovedAdvice: string;
}

/**
 * Holds every mapped limit of one subject on the driven ways and passed nodes against the vehicle.
 * The figure that leaves least is said once per place; what could not be read or is not settled is said beside it.
 */
export function holdLimits(input: RuleInput, rule: LimitRule): Finding[] {
  const drafts = limitedPlaces(input.drive, input.roads).flatMap((place) => {
    const claims = limitClaims(place.tags, rule.quantities, place.forward);
    return claims.length === 0 ? [] : holdPlace(input, rule, place, claims);
  });
  return makeFindings(input, rule.subject, drafts);
}

function holdPlace(input: RuleInput, rule: LimitRule, place: Place, claims: readonly LimitClaim[]): Draft[] {
  const drafts: Draft[] = [];
  const worst = worstFigure(rule, place, claims);
  const lifting = worst === undefined ? [] : claims.filter((claim) => mayLift(claim, worst));
  if (worst !== undefined) drafts.push(figureDraft(rule, place, worst, lifting));
  for (const claim of claims) {
    if (lifting.includes(claim)) continue;
    const doubt = doubtOf(input, rule, place, claim);
    if (doubt !== undefined) drafts.push(doubt);
  }
  return drafts;
}

interface Figure {
  readonly claim: LimitClaim;
  readonly value: number;
  readonly judged: Judged;
}

function worstFigure(rule: LimitRule, place: Place, claims: readonly LimitClaim[]): Figure | undefined {
  let worst: Figure | undefined;
  for (const claim of claims) {
    if (claim.binding !== 'always' || claim.reading.kind !== 'value') continue;
    const { value } = claim.reading;
    if (rule.disbelieve?.(value) !== undefined) continue;
    const judged = rule.judge(claim, value, place);
    if (judged === undefined) continue;
    const worse =
      worst === undefined ||
      (judged.level === worst.judged.level ? judged.spare < worst.judged.spare : judged.level === 'barred');
    if (worse) worst = { claim, value, judged };
  }
  return worst;
}

/** A condition or a lane may lift the limit: until that is settled, over the limit is unproved. */
function mayLift(claim: LimitClaim, worst: Figure): boolean {
  if (worst.judged.level !== 'barred') return false;
  if (claim.binding !== 'condition' && claim.binding !== 'lane') return false;
  const { base, basis, modeRank } = worst.claim;
  // what is said of the law moves no wall, and what is said of all does not reach what is said of motorhomes
  return claim.base === base && claim.basis === basis && claim.modeRank >= modeRank;
}

function figureDraft(rule: LimitRule, place: Place, worst: Figure, lifting: readonly LimitClaim[]): Draft {
  const { claim, value, judged } = worst;
  const unless = lifting.map(
    (other) => ` "${other.key}=${other.text}" may change that; it is not settled here.`,
  );
  return {
    level: lifting.length > 0 ? 'unproved' : judged.level,
    place,
    tags: Object.assign({}, ...[claim, ...lifting].map(tagOf)),
    limit: { value, unit: rule.unit, asMapped: claim.text },
    vehicle: judged.vehicle,
    spare: judged.spare,
    say: `${judged.say}${noteText(claim.reading)}${unless.join('')}`,
    advice: judged.advice,
  };
}

function tagOf(claim: LimitClaim): Tags {
  return { [claim.key]: claim.text };
}

function noteText(reading: Reading): string {
  if (reading.kind === 'unreadable' || reading.notes.length === 0) return '';
  return ` (Read from the map with care: ${reading.notes.map((note) => NOTE_TEXT[note]).join(', ')}.)`;
}

function doubtOf(input: RuleInput, rule: LimitRule, place: Place, claim: LimitClaim): Draft | undefined {
  const why = reasonToDoubt(input, rule, place, claim);
  if (why === undefined) return undefined;
  const harmless = claim.binding !== 'always' && isFreeWhateverItMeans(rule, place, claim);
  if (harmless && claim.binding === 'goods') return undefined;
  return {
    level: 'unproved',
    place,
    tags: tagOf(claim),
    say: `"${claim.key}=${claim.text}": ${why}.`,
    advice: rule.unprovedAdvice,
    aspect: claim.key,
    ...(harmless ? { folded: true } : {}),
  };
}

function reasonToDoubt(
  input: RuleInput,
  rule: LimitRule,
  place: Place,
  claim: LimitClaim,
): string | undefined {
  switch (claim.binding) {
    case 'condition':
      return 'holds under a condition that is not settled here';
    case 'lane':
      return 'differs from lane to lane and is not settled here';
    case 'notUnderstood':
      return 'a limit that is not understood';
    case 'goods':
      return input.envelope.grossKg > GOODS_SIGNS_FROM_KG
        ? 'said of goods vehicles; in some countries such signs bind a motorhome over 3.5 t'
        : undefined;
    case 'always':
      return reasonInReading(rule, place, claim.reading);
  }
}

function reasonInReading(rule: LimitRule, place: Place, reading: Reading): string | undefined {
  if (reading.kind === 'unreadable') return `cannot be read as a limit (${reading.reason})`;
  if (reading.kind === 'value') return rule.disbelieve?.(reading.value);
  if (reading.kind === 'below_default') return 'lower than the general rule, and nobody mapped by how much';
  return rule.judgeWord?.(reading.kind, place);
}

/**
 * Whether each figure in an unsettled text leaves the vehicle free, so that no meaning of it could stop it.
 * `a|b` are lanes, `a @ b; c @ d` clauses.
 */
function isFreeWhateverItMeans(rule: LimitRule, place: Place, claim: LimitClaim): boolean {
  if (claim.quantity === 'unknown') return false;
  return claim.text.split(/\||;(?![^()]*\))/).every((part) => {
    const figure = (part.split('@')[0] ?? '').trim();
    if (figure === '') return part === '';
    const reading = readQuantity(figure, claim.quantity);
    if (reading.kind === 'value')
      return (
        rule.disbelieve?.(reading.value) === undefined &&
        rule.judge(claim, reading.value, place) === undefined
      );
    return reading.kind === 'none';
  });
}
