import type { About } from '../../report/kinds.ts';
import type { Tags } from '../../roads/roads.ts';
import { lanesDriven, readLaneKey } from '../../tags/lanes.ts';
import { type LimitClaim, limitClaims, readQuantity } from '../../tags/limits.ts';
import { type OpenCondition, type Possible, type Resolved, resolveTag } from '../../tags/resolve.ts';
import { sayClause, sayTime } from '../../tags/say-condition.ts';
import { contextsAt } from '../conditions.ts';
import { conditionRuns, isWithin } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { limitedPlaces, type Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { type GoodsSigns, goodsSignsAt, sayGoods } from './goods-signs.ts';
import { type DoubtKind, type Outcome, outcomeOf } from './limit-outcome.ts';
import type { LimitRule } from './limit-rule.ts';

/**
 * Holds every mapped limit of one subject on the driven ways and passed nodes against the vehicle: lanes and
 * conditions are judged, more specific forms override less specific ones.
 * The figure that leaves least is said once per place; what is not settled or cannot be read is said beside it.
 */
export function holdLimits(input: RuleInput, rule: LimitRule): Draft[] {
  return limitedPlaces(input.drive, input.roads).flatMap((place) => {
    const claims = limitClaims(place.tags, rule.quantities, place.forward);
    return claims.length === 0 ? [] : worstOnce(holdPlace(input, rule, place, claims));
  });
}

/** Settled figures of one place, the worst of them alone; everything else stays. */
function worstOnce(drafts: readonly Draft[]): Draft[] {
  const figures = drafts.filter((draft) => draft.aspect === undefined);
  const worst = figures.reduce<Draft | undefined>((sofar, draft) => {
    if (sofar === undefined) return draft;
    const [a, b] = [draft.spare ?? 0, sofar.spare ?? 0];
    const worse = draft.level === sofar.level ? a < b : draft.level === 'barred';
    return worse ? draft : sofar;
  }, undefined);
  return [...(worst === undefined ? [] : [worst]), ...drafts.filter((draft) => draft.aspect !== undefined)];
}

function holdPlace(input: RuleInput, rule: LimitRule, place: Place, claims: readonly LimitClaim[]): Draft[] {
  const goods = claims.some((claim) => claim.binding === 'goods')
    ? goodsSignsAt(input, place.fromM)
    : undefined;
  const drafts: Draft[] = [];
  const families = new Map<string, LimitClaim[]>();
  for (const claim of claims) {
    if (claim.binding === 'goods' && (goods === undefined || isOfOneKindOfLorry(claim))) continue;
    if (!claim.understood)
      drafts.push(
        doubtDraft(rule, place, claim, 'not understood', whyStrange(claim), isFree(rule, place, claim)),
      );
    else if (!claim.lanes || drivesThoseLanes(claim, place))
      families.set(claim.family, [...(families.get(claim.family) ?? []), claim]);
  }
  for (const family of families.values())
    for (const [plain, conditionals] of splitFamily(family)) {
      const draft = holdOne(input, rule, place, plain, conditionals, goods);
      if (draft !== undefined) drafts.push(draft);
    }
  return drafts;
}

function whyStrange({ meant }: LimitClaim): string {
  return meant === undefined
    ? 'a limit that is not understood'
    : `no limit has that name; ${meant} may be meant`;
}

/** What is said of articulated lorries reaches no motorhome. */
function isOfOneKindOfLorry(claim: LimitClaim): boolean {
  return claim.key.includes('hgv_');
}

function drivesThoseLanes(claim: LimitClaim, place: Place): boolean {
  const key = readLaneKey(claim.key);
  return key === undefined || lanesDriven(key, place.forward);
}

const rankOf = (claim: LimitClaim): number => claim.modeRank * 2 + (claim.directed ? 1 : 0);

/**
 * The unconditional tag of a family, with the conditions that override it. Lane by lane is more specific than the
 * plain tag; a less specific mode's forms cannot change a more specific one's.
 */
function splitFamily(family: readonly LimitClaim[]): [LimitClaim | undefined, LimitClaim[]][] {
  const plains = family.filter((claim) => !claim.conditional && !claim.lanes);
  const plain = plains[0];
  const reaches = (claim: LimitClaim) => claim.modeRank >= (plain?.modeRank ?? 0);
  const lanes = family.filter((claim) => claim.lanes && !claim.conditional && reaches(claim));
  const conditionals = family
    .filter((claim) => claim.conditional && reaches(claim))
    .sort((a, b) => rankOf(a) - rankOf(b));
  // goods vehicles' tags may stand side by side without one being the more specific
  const heads = lanes.length > 0 ? lanes : plains.length > 0 ? plains : [undefined];
  return heads.map((head) => [head, conditionals]);
}

function holdOne(
  input: RuleInput,
  rule: LimitRule,
  place: Place,
  plain: LimitClaim | undefined,
  conditionals: readonly LimitClaim[],
  goods: GoodsSigns | undefined,
): Draft | undefined {
  const resolved = resolveTag(plain, conditionals, (claim) =>
    contextsAt(input, place, isWithin(place, conditionRuns(input, claim.key, claim.text))),
  );
  const base = place.tags[plainKey(plain ?? conditionals[0])];
  const judge = ({ value, from }: Pick<Possible<LimitClaim>, 'value' | 'from'>): Outcome =>
    value === undefined || from === undefined ? { kind: 'free' } : outcomeOf(rule, place, from, value, base);
  const ofGoods = (plain ?? conditionals[0])?.binding === 'goods' ? goods : undefined;
  const draft =
    resolved.open.length === 0
      ? settledDraft(input, rule, place, resolved, judge)
      : openDraft(rule, place, resolved, judge);
  if (draft === undefined || ofGoods === undefined) return draft;
  const say = `${draft.say} ${sayGoods(ofGoods)}`;
  if (ofGoods.are === 'bind') return { ...draft, say };
  const aspect = draft.aspect ?? Object.keys(draft.tags)[0];
  return { ...draft, level: 'unknown', say, advice: rule.unknownAdvice, ...(aspect && { aspect }) };
}

function plainKey(claim: LimitClaim | undefined): string {
  return claim === undefined ? '' : claim.key.replace(/:lanes.*$/, '').replace(/:conditional$/, '');
}

type Judge = (possible: Pick<Possible<LimitClaim>, 'value' | 'from'>) => Outcome;

function settledDraft(
  input: RuleInput,
  rule: LimitRule,
  place: Place,
  resolved: Resolved<LimitClaim>,
  judge: Judge,
): Draft | undefined {
  const [only] = resolved.possible;
  const claim = only?.from;
  if (only === undefined || claim === undefined) return undefined;
  const outcome = judge(only);
  if (outcome.kind === 'free') return undefined;
  if (outcome.kind === 'doubt') return doubtDraft(rule, place, claim, outcome.of, outcome.why, false);
  const free = freeFrom(input, place, resolved, judge);
  const { judged, value, asMapped } = outcome;
  return {
    ...limitOf(rule, outcome.lane),
    level: judged.level,
    run: runOf(place),
    tags: { ...tagOf(claim), ...(free && resolved.next ? tagOf(resolved.next.tag) : {}) },
    limit: { value, unit: rule.unit, asMapped },
    vehicle: judged.vehicle,
    spare: judged.spare,
    say: `${judged.say}${sayClause(only.clause)}`,
    advice: free === undefined ? judged.advice : `${judged.advice} Free from ${free}.`,
  };
}

/** When the clock next lifts the limit, in words. */
function freeFrom(
  input: RuleInput,
  place: Place,
  resolved: Resolved<LimitClaim>,
  judge: Judge,
): string | undefined {
  const { next } = resolved;
  const now = next && input.along.clockAt(place.toM);
  if (next === undefined || now === undefined) return undefined;
  if (judge({ value: next.value, from: next.tag }).kind !== 'free') return undefined;
  return sayTime(next.at, now);
}

/** Something is not settled: what every case has in common is said for certain, the worst of them otherwise. */
function openDraft(
  rule: LimitRule,
  place: Place,
  resolved: Resolved<LimitClaim>,
  judge: Judge,
): Draft | undefined {
  const { open } = resolved;
  const cases = resolved.possible.map((possible) => ({ possible, outcome: judge(possible) }));
  const worst = worstCase(cases.map(({ outcome }) => outcome));
  const notUnderstood = open.find((each) => each.level === 'unknown');
  if (worst === undefined) {
    if (notUnderstood === undefined) return undefined;
    const { tag, why } = notUnderstood;
    const harmless = !notUnderstood.unreadable || isFree(rule, place, tag);
    return doubtDraft(
      rule,
      place,
      tag,
      notUnderstood.unreadable ? 'unreadable' : 'not understood',
      whyOpen(why, notUnderstood),
      harmless,
    );
  }
  const tags = tagsOf([
    ...cases.flatMap(({ possible }) => possible.from ?? []),
    ...open.map(({ tag }) => tag),
  ]);
  const first = open[0] as OpenCondition<LimitClaim>;
  if (worst.kind === 'doubt')
    return { ...doubtDraft(rule, place, first.tag, worst.of, `${worst.why}; ${first.why}`, false), tags };
  const { judged, value, asMapped } = worst;
  const certain =
    cases.every(({ outcome }) => outcome.kind === 'held' && outcome.judged.level === 'barred') &&
    !open.some((each) => each.unreadable);
  const level = certain ? 'barred' : notUnderstood === undefined ? 'tight' : 'unknown';
  const unless = open.map((each) => sayOpen(each)).join('');
  return {
    ...limitOf(rule, worst.lane),
    level,
    run: runOf(place),
    tags,
    limit: { value, unit: rule.unit, asMapped },
    vehicle: judged.vehicle,
    spare: judged.spare,
    say: `${judged.say}${certain ? '' : unless}`,
    advice: certain ? judged.advice : adviseOpen(open, rule.unknownAdvice),
    ...(certain ? {} : { aspect: first.tag.key }),
  };
}

function worstCase(outcomes: readonly Outcome[]): Exclude<Outcome, { kind: 'free' }> | undefined {
  let worst: Exclude<Outcome, { kind: 'free' }> | undefined;
  for (const outcome of outcomes) {
    if (outcome.kind === 'free') continue;
    if (worst === undefined || (worst.kind === 'doubt' && outcome.kind === 'held')) worst = outcome;
    else if (outcome.kind === 'held' && worst.kind === 'held' && outcome.judged.spare < worst.judged.spare)
      worst = outcome;
  }
  return worst;
}

function whyOpen(why: string, open: OpenCondition<LimitClaim>): string {
  return open.unreadable ? why : `holds under a condition that is not settled: ${why}`;
}

/** " Whether it binds: it depends on the time of passing (Monday to Friday 07:00 to 19:00)." */
function sayOpen(open: OpenCondition<{ readonly key: string; readonly text: string }>): string {
  const { tag, why, level, unreadable } = open;
  if (level === 'tight') return ` Whether it binds is open: ${why}.`;
  const text = `"${tag.key}=${tag.text}"`;
  return unreadable ? ` ${text} ${why}.` : ` ${text} may change that: ${why}.`;
}

/**
 * What to do where it is open whether something holds.
 * @param otherwise where more than a time or a sign is wanted
 */
export function adviseOpen(
  open: readonly Pick<OpenCondition<never>, 'wantsTime' | 'level'>[],
  otherwise: string,
): string {
  if (open.every((each) => each.wantsTime)) return 'Give a leave time, or pass outside these hours.';
  return open.every((each) => each.level === 'tight')
    ? 'Look for the sign, and mind what it asks.'
    : otherwise;
}

function limitOf({ subject }: LimitRule, lane: boolean): About<LimitRule['subject']> {
  if (subject === 'map') return { subject, kind: 'not understood' };
  return { subject, kind: lane ? 'lane' : 'limit' };
}

function doubtDraft(
  rule: LimitRule,
  place: Place,
  claim: LimitClaim,
  of: DoubtKind,
  why: string,
  harmless: boolean,
): Draft {
  const about: About<LimitRule['subject']> =
    rule.subject === 'map' ? limitOf(rule, false) : { subject: rule.subject, kind: of };
  return {
    ...about,
    level: 'unknown',
    run: runOf(place),
    tags: tagOf(claim),
    say: `"${claim.key}=${claim.text}": ${why}.`,
    advice: rule.unknownAdvice,
    aspect: claim.key,
    folded: harmless,
  };
}

function tagOf(claim: LimitClaim): Tags {
  return { [claim.key]: claim.text };
}

function tagsOf(claims: readonly LimitClaim[]): Tags {
  return Object.assign({}, ...claims.map(tagOf));
}

/**
 * Whether each figure in a text nobody can take apart leaves the vehicle free, so that no meaning of it could stop it.
 * `a|b` are lanes, `a @ b; c @ d` clauses.
 */
function isFree(rule: LimitRule, place: Place, claim: LimitClaim): boolean {
  if (claim.quantity === 'unknown') return false;
  return claim.text.split(/\||;(?![^()]*\))/).every((part) => {
    const figure = (part.split('@')[0] ?? '').trim();
    if (figure === '') return part === '';
    const reading = readQuantity(figure, claim.quantity);
    if (reading.kind !== 'value') return reading.kind === 'none';
    return outcomeOf(rule, place, { ...claim, lanes: false }, figure, undefined).kind === 'free';
  });
}
