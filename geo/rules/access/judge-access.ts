import { given } from '../../given.ts';
import type { Level } from '../../report/report.ts';
import {
  type Access,
  type AccessDoubt,
  type AccessTag,
  accessConditions,
  accessDoubts,
} from '../../tags/access.ts';
import { accessLevel, readAccessValue } from '../../tags/access-value.ts';
import type { ConditionContext } from '../../tags/conditional/context.ts';
import { type Possible, type Resolved, resolveTag } from '../../tags/resolve.ts';
import { sayClause, sayTime } from '../../tags/say-condition.ts';
import { contextsAt } from '../conditions.ts';
import { adviseOpen } from '../limits/hold-limits.ts';
import type { Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { laneWords } from './lane-access.ts';
import {
  type AccessWords,
  adviseAccess,
  KIND_OF_MEANING,
  sayAccess,
  sayDoubt,
  sayOpenAccess,
} from './say-access.ts';

/** What one access tag or the lack of one means: `untagged` where nothing of the motorhome's chain is mapped. */
type Case = { readonly access: Access; readonly level: Level | undefined } | 'untagged';

export interface AccessJudged {
  /** what is certain or open about the way as a whole; undefined: open to us */
  readonly words?: AccessWords;
  /** nothing tagged decides, and perhaps nothing will: the kind of barrier does */
  readonly untagged: 'yes' | 'maybe' | 'no';
  /** lanes and keys nobody settles, beside it */
  readonly beside: readonly AccessWords[];
}

/**
 * Judges the motorhome's own access keys at a place, conditions at the minute it passes.
 * @param deciding what the plain tags and the class of road say; undefined where they say nothing
 */
export function judgeAccess(
  input: RuleInput,
  place: Place,
  within: boolean,
  deciding: Access | undefined,
): AccessJudged {
  const { tags, forward } = place;
  const rank = deciding?.rank ?? 0;
  const resolved = resolveTag<AccessTag>(
    undefined,
    accessConditions(tags, forward, rank).filter(({ lanes }) => !lanes),
    once((): ConditionContext[] => contextsAt(input, place, within)),
  );
  const caseOf = ({ value, from }: Possible<AccessTag>): Case => {
    if (value === undefined || from === undefined)
      return deciding === undefined
        ? 'untagged'
        : { access: deciding, level: accessLevel(deciding.meaning, within) };
    const access: Access = {
      meaning: readUnder(value, from, deciding),
      key: from.key,
      text: value,
      rank: from.rank,
      asMapped: from.text,
    };
    return { access, level: accessLevel(access.meaning, within) };
  };
  const cases = resolved.possible.map(caseOf);
  const untagged = cases.every((one) => one === 'untagged')
    ? 'yes'
    : cases.includes('untagged')
      ? 'maybe'
      : 'no';
  const said =
    resolved.open.length === 0
      ? settledWords(input, place, within, resolved, cases[0] ?? 'untagged', caseOf)
      : openWords(within, resolved, cases, place);
  const byLane = laneWords(input, place, within, deciding);
  // lane by lane is the more specific word
  const words = byLane.length > 0 && resolved.possible[0]?.from === undefined ? undefined : said;
  const barred = words?.level === 'barred';
  const plain = deciding ?? { meaning: 'open', key: '', text: '', rank: 0 };
  const doubts = accessDoubts(tags, forward, plain).filter((doubt) => concerns(input, place, within, doubt));
  return {
    ...given({ words: words && withLift(words, doubts, within) }),
    untagged,
    beside: [...byLane, ...(barred ? [] : doubts.map((doubt) => doubtWords(doubt, within)))],
  };
}

/** A general `access` does not open a way made for others, under a condition or without. */
function readUnder(value: string, from: AccessTag, deciding: Access | undefined): Access['meaning'] {
  const meaning = readAccessValue(value);
  const madeForOthers = deciding?.rank === 0 && deciding.key === 'highway' && deciding.meaning === 'no';
  const opens = meaning === 'open' || meaning === 'destination' || meaning === 'discouraged';
  return madeForOthers && opens && from.key.startsWith('access') ? 'unknown' : meaning;
}

function settledWords(
  input: RuleInput,
  place: Place,
  within: boolean,
  resolved: Resolved<AccessTag>,
  only: Case,
  caseOf: (possible: Possible<AccessTag>) => Case,
): AccessWords | undefined {
  if (only === 'untagged' || only.level === undefined) return undefined;
  const { access, level } = only;
  const clause = resolved.possible[0]?.clause;
  const { next } = resolved;
  const now = next && input.along.clockAt(place.toM);
  const then = next && caseOf({ value: next.value, from: next.value === undefined ? undefined : next.tag });
  const free = next && now && then && then !== 'untagged' && then.level === undefined;
  return {
    kind: KIND_OF_MEANING[access.meaning],
    level,
    tags: {
      [access.key]: place.tags[access.key] ?? access.text,
      ...(free ? { [next.tag.key]: next.tag.text } : {}),
    },
    say: `${sayAccess(access, within, place.tags)}${sayClause(clause)}`,
    advice: `${adviseAccess(level, within)}${free ? ` Free from ${sayTime(next.at, now)}.` : ''}`,
  };
}

function openWords(
  within: boolean,
  resolved: Resolved<AccessTag>,
  cases: readonly Case[],
  place: Place,
): AccessWords | undefined {
  const { open } = resolved;
  const worst = worstCase(cases);
  const unknown = open.find((each) => each.level === 'unknown');
  const about = worst === undefined ? '' : sayAccess(worst.access, within, place.tags);
  if (worst === undefined && unknown?.unreadable !== true) return undefined;
  const certain =
    cases.every((one) => one !== 'untagged' && one.level === 'barred') &&
    !open.some((each) => each.unreadable);
  if (certain && worst !== undefined)
    return {
      kind: KIND_OF_MEANING[worst.access.meaning],
      level: 'barred',
      tags: { [worst.access.key]: place.tags[worst.access.key] ?? worst.access.text },
      say: about,
      advice: adviseAccess('barred', within),
    };
  const level = worst?.level === 'care' && !unknown?.unreadable ? 'care' : levelOf(worst?.level, unknown);
  const tags = Object.fromEntries(open.map(({ tag }) => [tag.key, tag.text]));
  if (worst !== undefined && worst.access.key in place.tags)
    tags[worst.access.key] = place.tags[worst.access.key] ?? '';
  return {
    kind: worst === undefined ? 'not understood' : KIND_OF_MEANING[worst.access.meaning],
    level,
    tags,
    say: [about, ...open.map(sayOpenAccess)].filter((text) => text !== '').join(' '),
    advice: adviseOpen(open, adviseAccess('unknown', within)),
    aspect: open[0]?.tag.key ?? '',
  };
}

function levelOf(worst: Level | undefined, unknown: unknown): Level {
  return worst === 'barred' && unknown === undefined ? 'tight' : 'unknown';
}

const ORDER: readonly (Level | undefined)[] = ['barred', 'tight', 'unknown', 'care', undefined];

function worstCase(cases: readonly Case[]): Exclude<Case, 'untagged'> | undefined {
  let worst: Exclude<Case, 'untagged'> | undefined;
  for (const one of cases) {
    if (one === 'untagged' || one.level === undefined) continue;
    if (worst === undefined || ORDER.indexOf(one.level) < ORDER.indexOf(worst.level)) worst = one;
  }
  return worst;
}

/** Conditions and lanes are judged elsewhere; a key nobody understands may lift a ban, and so may a lane. */
function concerns(input: RuleInput, place: Place, within: boolean, doubt: AccessDoubt): boolean {
  if (doubt.binding === 'goods' || doubt.binding === 'lane') return false;
  if (doubt.binding !== 'condition') return true;
  if (!doubt.key.startsWith('motorcar')) return false;
  const tag = { key: doubt.key, text: doubt.text };
  const { possible, open } = resolveTag(undefined, [tag], () => contextsAt(input, place, within));
  const closes = possible.some(({ value }) => value !== undefined && readAccessValue(value) !== 'open');
  return closes || open.some((each) => each.unreadable);
}

function withLift(words: AccessWords, doubts: readonly AccessDoubt[], within: boolean): AccessWords {
  const lifting = doubts.filter((doubt) => doubt.binding !== 'motorcar' && !doubt.key.startsWith('motorcar'));
  if (words.level !== 'barred' || lifting.length === 0) return words;
  return {
    ...words,
    level: 'unknown',
    tags: { ...words.tags, ...Object.fromEntries(lifting.map(({ key, text }) => [key, text])) },
    say: [words.say, ...lifting.map(sayDoubt)].join(' '),
    advice: adviseAccess('unknown', within),
  };
}

function doubtWords(doubt: AccessDoubt, within: boolean): AccessWords {
  return {
    kind: doubt.binding === 'motorcar' ? 'unclear' : 'not understood',
    level: 'unknown',
    tags: { [doubt.key]: doubt.text },
    say: sayDoubt(doubt),
    advice: adviseAccess('unknown', within),
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
