import { given } from '../../given.ts';
import type { Wants } from '../../report/kinds.ts';
import type { Level } from '../../report/level.ts';
import {
  type Access,
  type AccessDoubt,
  type AccessTag,
  accessConditions,
  accessDoubts,
} from '../../tags/access.ts';
import { onlyCloses, readAccessValue } from '../../tags/access-value.ts';
import type { ConditionContext } from '../../tags/conditional/context.ts';
import { type Possible, type Resolved, resolveTag } from '../../tags/resolve.ts';
import { sayClause } from '../../tags/say-condition.ts';
import { contextsAt } from '../conditions.ts';
import { adviseOpen, levelWhenOpen, wantsOf } from '../open-conditions.ts';
import { type Opens, opensFrom, withOpens } from '../opens.ts';
import type { AccessAsked, AccessSaid } from './access-asked.ts';
import { accessLevel, KIND_OF_MEANING, mayClose } from './access-level.ts';
import { closesEveryLane, lanesSaid } from './lane-access.ts';
import { adviseAccess, sayAccess, sayDoubt, sayOpenAccess } from './say-access.ts';

/** What one access tag means here. */
interface Case {
  readonly access: Access;
  readonly level: Level | undefined;
}

/** A case, or nothing of the motorhome's chain is mapped. */
type CaseOrNone = Case | 'untagged';

export interface AccessJudged {
  /** what is certain or open about the place as a whole; undefined: open to us */
  readonly said?: AccessSaid;
  /** nothing tagged decides, and perhaps nothing will: the kind of barrier does; `unlessClosed`: or it is closed */
  readonly untagged: 'yes' | 'unlessClosed' | 'maybe' | 'no';
  /** when the clock opens what nothing tagged decides now */
  readonly free?: FreeFrom;
  /** lanes and keys nobody settles, beside it */
  readonly beside: readonly AccessSaid[];
}

/** Judges the motorhome's own access keys at a place, conditions at the minute it passes. */
export function judgeAccess(asked: AccessAsked): AccessJudged {
  const { input, place, reach, deciding } = asked;
  const { tags, forward } = place;
  const resolved = withRoughClosures(
    resolveTag<AccessTag>(
      undefined,
      accessConditions({ tags, forward }, deciding?.rank ?? 0).filter(({ lanes }) => !lanes),
      once((): ConditionContext[] => contextsAt(input, place, reach)),
    ),
  );
  const cases = resolved.possible.map((possible) => caseOf(asked, possible));
  const whole =
    resolved.open.length === 0
      ? settledSaid(asked, resolved, cases[0] ?? 'untagged')
      : openSaid(asked, resolved, cases);
  const byLane = lanesSaid(asked);
  // lane by lane is the more specific word
  const said = byLane.length > 0 && resolved.possible[0]?.from === undefined ? undefined : whole;
  const plain = deciding ?? { meaning: 'open', key: '', text: '', rank: 0 };
  const doubts = accessDoubts({ tags, forward }, plain).filter((doubt) => concerns(asked, doubt));
  const barred = said?.level === 'barred';
  return {
    ...given({ said: said && withLift(asked, said, doubts), free: freeFrom(asked, resolved) }),
    untagged: untaggedOf(cases, resolved),
    beside: [...byLane, ...(barred ? [] : doubts.map((doubt) => doubtSaid(asked, doubt)))],
  };
}

/** A condition nobody can read that only ever closes opens nothing: it may close, and that is all. */
function withRoughClosures(resolved: Resolved<AccessTag>): Resolved<AccessTag> {
  const closing = resolved.open.filter(({ unreadable, tag }) => unreadable && onlyCloses(tag.text));
  if (closing.length === 0) return resolved;
  return {
    ...resolved,
    possible: [...resolved.possible, ...closing.map(({ tag }) => ({ value: 'no', from: tag }))],
    open: resolved.open.map((each) => (closing.includes(each) ? { ...each, unreadable: false } : each)),
  };
}

function untaggedOf(cases: readonly CaseOrNone[], { open }: Resolved<AccessTag>): AccessJudged['untagged'] {
  if (open.length === 0 && cases.every((one) => one === 'untagged')) return 'yes';
  if (!cases.includes('untagged')) return 'no';
  const closes = cases.every((one) => one === 'untagged' || one.level === 'barred');
  return closes && !open.some(({ unreadable }) => unreadable) ? 'unlessClosed' : 'maybe';
}

function caseOf(asked: AccessAsked, { value, from }: Possible<AccessTag>): CaseOrNone {
  const { deciding } = asked;
  if (value === undefined || from === undefined)
    return deciding === undefined
      ? 'untagged'
      : { access: deciding, level: accessLevel(deciding.meaning, asked) };
  const meaning = readUnder(value, from, deciding);
  const access = { meaning, key: from.key, text: value, rank: from.rank, asMapped: from.text };
  return { access, level: accessLevel(meaning, asked) };
}

/** A general `access` does not open a way made for others, under a condition or without. */
function readUnder(value: string, from: AccessTag, deciding: Access | undefined): Access['meaning'] {
  const meaning = readAccessValue(value);
  const madeForOthers = deciding?.rank === 0 && deciding.key === 'highway' && deciding.meaning === 'no';
  const opens = meaning === 'open' || meaning === 'destination' || meaning === 'discouraged';
  return madeForOthers && opens && from.key.startsWith('access') ? 'unknown' : meaning;
}

function settledSaid(
  asked: AccessAsked,
  resolved: Resolved<AccessTag>,
  only: CaseOrNone,
): AccessSaid | undefined {
  if (only === 'untagged' || only.level === undefined) return undefined;
  const { place, reach } = asked;
  const { access, level } = only;
  const free = freeFrom(asked, resolved);
  return withOpens(
    {
      kind: KIND_OF_MEANING[access.meaning],
      level,
      ...given({ wants: wantsOfAccess(only) }),
      tags: {
        [access.key]: place.tags[access.key] ?? access.text,
        ...(free && { [free.tag.key]: free.tag.text }),
      },
      say: `${sayAccess(access, reach, place.tags)}${sayClause(resolved.possible[0]?.clause)}`,
      advice: adviseAccess(level, reach),
    },
    free?.opens,
  );
}

/** When the clock next opens a place, and the tag that does. */
export interface FreeFrom {
  readonly opens: Opens;
  readonly tag: AccessTag;
}

function freeFrom(asked: AccessAsked, { next }: Resolved<AccessTag>): FreeFrom | undefined {
  const opens = opensFrom(asked.input, asked.place, next?.at);
  if (next === undefined || opens === undefined) return undefined;
  const then = caseOf(asked, { value: next.value, from: next.value === undefined ? undefined : next.tag });
  if (then === 'untagged' || then.level !== undefined) return undefined;
  return { opens, tag: next.tag };
}

function wantsOfAccess({ access, level }: Case): Wants | undefined {
  if (level !== 'unknown') return undefined;
  const ofOwner = access.meaning === 'private' || access.meaning === 'permit' || access.key === 'route';
  return ofOwner ? 'permission' : 'sign';
}

function openSaid(
  { place, reach }: AccessAsked,
  { open }: Resolved<AccessTag>,
  cases: readonly CaseOrNone[],
): AccessSaid | undefined {
  const worst = worstOf(cases);
  if (worst === undefined && !open.some(({ unreadable }) => unreadable)) return undefined;
  const level = levelWhenOpen(
    cases.map((one) => (one === 'untagged' ? undefined : one.level)),
    open,
  );
  const about = worst && sayAccess(worst.access, reach, place.tags);
  const kind = worst === undefined ? 'not understood' : KIND_OF_MEANING[worst.access.meaning];
  if (level === 'barred' && worst !== undefined)
    return {
      kind,
      level,
      tags: { [worst.access.key]: place.tags[worst.access.key] ?? worst.access.text },
      say: about ?? '',
      advice: adviseAccess('barred', reach),
    };
  const tags = Object.fromEntries(open.map(({ tag }) => [tag.key, tag.text]));
  if (worst !== undefined && worst.access.key in place.tags)
    tags[worst.access.key] = place.tags[worst.access.key] ?? '';
  return {
    kind,
    level,
    ...given({ wants: level === 'unknown' ? wantsOf(open) : undefined }),
    tags,
    say: [...(about === undefined ? [] : [about]), ...open.map(sayOpenAccess)].join(' '),
    advice: adviseOpen(open, adviseAccess('unknown', reach)),
    aspect: open[0]?.tag.key ?? '',
  };
}

/** What may stop us comes before what is advised against. */
const WORST_FIRST: readonly Level[] = ['barred', 'unknown', 'tight', 'care'];

function worstOf(cases: readonly CaseOrNone[]): Case | undefined {
  const told = cases.filter((one): one is Case => one !== 'untagged' && one.level !== undefined);
  return WORST_FIRST.flatMap((level) => told.filter((one) => one.level === level))[0];
}

/** Our own conditions and lanes are judged elsewhere; a key nobody understands may lift a ban. */
function concerns(asked: AccessAsked, doubt: AccessDoubt): boolean {
  if (doubt.binding === 'notUnderstood') return true;
  // what it would open is open as it is, or closed by a tag that it may lift
  if (doubt.binding === 'misspelt')
    return readAccessValue(doubt.text) !== 'open' || (asked.deciding?.meaning ?? 'open') !== 'open';
  if (doubt.binding === 'motorcar') return mayClose(readAccessValue(doubt.text), asked);
  if (!doubt.key.startsWith('motorcar')) return false;
  if (doubt.binding === 'lane') return closesEveryLane(asked, doubt.text);
  const { input, place, reach } = asked;
  const tag = { key: doubt.key, text: doubt.text };
  const { possible, open } = resolveTag(undefined, [tag], () => contextsAt(input, place, reach));
  const closes = possible.some(({ value }) => value !== undefined && readAccessValue(value) !== 'open');
  return closes || open.some((each) => each.unreadable);
}

function withLift({ reach }: AccessAsked, said: AccessSaid, doubts: readonly AccessDoubt[]): AccessSaid {
  const lifting = doubts.filter(({ key, text }) => !key.startsWith('motorcar') && !onlyCloses(text));
  if (said.level !== 'barred' || lifting.length === 0) return said;
  return {
    ...said,
    level: 'unknown',
    wants: 'sign',
    tags: { ...said.tags, ...Object.fromEntries(lifting.map(({ key, text }) => [key, text])) },
    say: [said.say, ...lifting.map(sayDoubt)].join(' '),
    advice: adviseAccess('unknown', reach),
  };
}

function doubtSaid({ reach }: AccessAsked, doubt: AccessDoubt): AccessSaid {
  return {
    kind: doubt.binding === 'motorcar' ? 'unclear' : 'not understood',
    level: 'unknown',
    wants: 'sign',
    tags: { [doubt.key]: doubt.text },
    say: sayDoubt(doubt),
    advice: adviseAccess('unknown', reach),
    aspect: doubt.key,
  };
}

/** Looking up the place and its clock is worth it only where a condition asks, and then once. */
function once<T>(make: () => T): () => T {
  const made: T[] = [];
  return () => {
    if (made.length === 0) made.push(make());
    return made[0] as T;
  };
}
