import { given } from '../../given.ts';
import type { About } from '../../report/kinds.ts';
import type { Level } from '../../report/level.ts';
import type { Tags } from '../../roads/roads.ts';
import { mergeTags } from '../../roads/set-tag.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { OpenCondition } from '../../tags/resolve.ts';
import { sayClause } from '../../tags/say-condition.ts';
import type { Draft } from '../finding.ts';
import { sayGoods } from '../goods-signs.ts';
import { adviseOpen, levelWhenOpen, wantsOf } from '../open-conditions.ts';
import { type Opens, opensFrom, withOpens } from '../opens.ts';
import { runOf } from '../run.ts';
import { isFree } from './limit-outcome.ts';
import type { Asked, Doubt, LimitSubject, Outcome, Settled } from './limit-rule.ts';
import { sayDoubt, sayOpen, whyOpen, whyStrange } from './say-limits.ts';

/** What is to be said of one limit at a place; undefined: it leaves the vehicle free. */
export function draftOf(asked: Asked, settled: Settled): Draft | undefined {
  const draft = settled.resolved.open.length === 0 ? settledDraft(asked, settled) : openDraft(asked, settled);
  const { goods, rule } = asked;
  if (draft === undefined || !settled.ofGoods || goods === undefined) return draft;
  const say = `${draft.say} ${sayGoods(goods)}`;
  if (goods.are === 'bind') return { ...draft, say };
  return {
    ...draft,
    level: 'unknown',
    wants: 'sign',
    say,
    advice: rule.unknownAdvice,
    ...given({ aspect: draft.aspect ?? Object.keys(draft.tags)[0] }),
  };
}

/** A claim whose key nobody understands: folded where no figure in it could stop the vehicle. */
export function strangeDraft(asked: Asked, claim: LimitClaim): Draft {
  const doubt: Doubt = { of: 'not understood', why: whyStrange(claim), wants: 'sign' };
  return { ...doubtDraft(asked, claim, doubt), folded: isFree(asked, claim) };
}

function settledDraft(asked: Asked, settled: Settled): Draft | undefined {
  const [only] = settled.resolved.possible;
  const claim = only?.from;
  if (only === undefined || claim === undefined) return undefined;
  const outcome = settled.judge(only);
  if (outcome.kind === 'free') return undefined;
  if (outcome.kind === 'doubt') return doubtDraft(asked, claim, outcome.doubt);
  const { next } = settled.resolved;
  const free = freeFrom(asked, settled);
  const { judged } = outcome;
  const draft = {
    ...heldDraft(asked, outcome),
    ...given({ wants: judged.wants }),
    tags: { ...tagOf(claim), ...(free && next ? tagOf(next.tag) : {}) },
    say: `${judged.say}${sayClause(only.clause)}`,
  };
  return withOpens(draft, free);
}

/** When the clock next lifts the limit. */
function freeFrom({ input, place }: Asked, { resolved: { next }, judge }: Settled): Opens | undefined {
  const lifted = next !== undefined && judge({ value: next.value, from: next.tag }).kind === 'free';
  return lifted ? opensFrom(input, place, next.at) : undefined;
}

/** Something is not settled: what every case has in common is said for certain, the worst of them otherwise. */
function openDraft(asked: Asked, { resolved, judge }: Settled): Draft | undefined {
  const { open, possible } = resolved;
  const [first] = open;
  if (first === undefined) return undefined;
  const outcomes = possible.map(judge);
  const worst = worstOf(outcomes);
  if (worst === undefined) return strangeConditionDraft(asked, open);
  const tags = tagsOf([...possible.flatMap(({ from }) => from ?? []), ...open.map(({ tag }) => tag)]);
  if (worst.kind === 'doubt') {
    const why = `${worst.doubt.why}; ${first.why}`;
    return { ...doubtDraft(asked, first.tag, { ...worst.doubt, why, wants: wantsOf(open) }), tags };
  }
  const draft = { ...heldDraft(asked, worst), tags };
  const { judged } = worst;
  const level = levelWhenOpen(outcomes.map(levelOf), open);
  if (level === 'barred') return { ...draft, say: judged.say, advice: judged.advice };
  return {
    ...draft,
    level,
    say: `${judged.say}${open.map(sayOpen).join('')}`,
    aspect: first.tag.key,
    ...(level === 'unknown'
      ? { wants: wantsOf(open), advice: adviseOpen(open, asked.rule.unknownAdvice) }
      : { advice: judged.advice }),
  };
}

/** No value that can be made out stops the vehicle: a word is due only where not all can be made out. */
function strangeConditionDraft(asked: Asked, open: readonly OpenCondition<LimitClaim>[]): Draft | undefined {
  const strange = open.filter(({ understood }) => !understood);
  const mayBind = strange.find(({ unreadable, tag }) => unreadable && !isFree(asked, tag));
  const told = mayBind ?? strange[0];
  if (told === undefined) return undefined;
  const of = told.unreadable ? 'unreadable' : 'not understood';
  return {
    ...doubtDraft(asked, told.tag, { of, why: whyOpen(told), wants: told.wants }),
    folded: mayBind === undefined,
  };
}

function levelOf(outcome: Outcome): Level | undefined {
  if (outcome.kind === 'held') return outcome.judged.level;
  return outcome.kind === 'doubt' ? 'unknown' : undefined;
}

type Found = Exclude<Outcome, { kind: 'free' }>;

function worstOf(outcomes: readonly Outcome[]): Found | undefined {
  let worst: Found | undefined;
  for (const outcome of outcomes) {
    if (outcome.kind === 'free') continue;
    if (worst === undefined || (worst.kind === 'doubt' && outcome.kind === 'held')) worst = outcome;
    else if (outcome.kind === 'held' && worst.kind === 'held' && outcome.judged.spare < worst.judged.spare)
      worst = outcome;
  }
  return worst;
}

function heldDraft(
  { rule, place }: Asked,
  { judged, value, asMapped }: Extract<Outcome, { kind: 'held' }>,
): Draft {
  return {
    ...judged.about,
    level: judged.level,
    run: runOf(place),
    limit: { value, unit: rule.unit, asMapped },
    vehicle: judged.vehicle,
    spare: judged.spare,
    tags: {},
    say: judged.say,
    advice: judged.advice,
  };
}

function doubtDraft({ rule, place }: Asked, claim: LimitClaim, { of, why, wants }: Doubt): Draft {
  const about: About<LimitSubject | 'map'> =
    rule.subject === 'map' ? { subject: 'map', kind: 'not understood' } : { subject: rule.subject, kind: of };
  return {
    ...about,
    level: 'unknown',
    wants,
    run: runOf(place),
    tags: tagOf(claim),
    say: sayDoubt(claim, why),
    advice: rule.unknownAdvice,
    aspect: claim.key,
  };
}

function tagOf(claim: LimitClaim): Tags {
  return { [claim.key]: claim.text };
}

function tagsOf(claims: readonly LimitClaim[]): Tags {
  return mergeTags(claims.map(tagOf));
}
