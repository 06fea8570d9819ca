import type { TurnRestriction } from '../../roads/roads.ts';
import { type AccessTag, accessFor, goodsAccess } from '../../tags/access.ts';
import { accessLevel, readAccessValue } from '../../tags/access-value.ts';
import { modeRank } from '../../tags/modes.ts';
import { resolveTag } from '../../tags/resolve.ts';
import { sayClause } from '../../tags/say-condition.ts';
import { turnRuleFor } from '../../tags/turn-restriction.ts';
import { contextsAt } from '../conditions.ts';
import { type EndRuns, isWithin, restrictedRuns } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { goodsSignsAt, sayGoods } from '../limits/goods-signs.ts';
import { adviseOpen } from '../limits/hold-limits.ts';
import { drivenWays, type Place, roadName } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { runOf } from '../run.ts';
import { judgeAccess } from './judge-access.ts';
import { laneWordsOf } from './lane-access.ts';
import { nodeAccess } from './node-access.ts';
import { adviseAccess, sayOpenAccess } from './say-access.ts';
import { wrongWays } from './wrong-way.ts';

/** Who may drive there: access of every driven way and of points on it, one-way roads driven against, turn restrictions broken. */
export const access: SubjectRule = (input) => {
  const runs = restrictedRuns(input.drive, input.roads);
  return [
    ...drivenWays(input.drive, input.roads).flatMap((place) => wayAccess(input, place, runs)),
    ...nodeAccess(input),
    ...againstOneways(input),
    ...brokenTurns(input),
  ];
};

function wayAccess(input: RuleInput, place: Place, runs: EndRuns): Draft[] {
  const within = isWithin(place, runs);
  const { tags, forward } = place;
  const deciding = accessFor(tags, forward);
  const { words, beside } = judgeAccess(input, place, within, deciding);
  const own = [...(words === undefined ? [] : [words]), ...beside].map(
    (each): Draft => ({ ...each, subject: 'access', run: runOf(place) }),
  );
  if (words?.level === 'barred' || deciding.rank >= modeRank('motorhome')) return own;
  return [...own, ...lorryAccess(input, place, within)];
}

/** `hgv` and its forms, where the country's signs for goods vehicles reach this motorhome. */
function lorryAccess(input: RuleInput, place: Place, within: boolean): Draft[] {
  const forms = goodsAccess(place.tags, place.forward);
  const signs = forms.length > 0 ? goodsSignsAt(input, place.fromM) : undefined;
  if (signs === undefined) return [];
  const isConditional = ({ key }: AccessTag) => key.endsWith(':conditional');
  const plain = forms.findLast((form) => !isConditional(form) && !form.lanes);
  const whole = forms.filter((form) => isConditional(form) && !form.lanes);
  const { possible, open } = resolveTag(plain, whole, () => contextsAt(input, place, within));
  const levels = possible.map(({ value }) =>
    value === undefined ? undefined : accessLevel(readAccessValue(value), within),
  );
  const closes = levels.some((level) => level !== undefined && level !== 'care');
  const byLane = forms
    .filter((form) => form.lanes && !isConditional(form))
    .flatMap((form) => laneWordsOf(form, within, undefined) ?? []);
  const drafts = byLane.map(
    (words): Draft => ({
      ...words,
      subject: 'access',
      run: runOf(place),
      say: `${words.say} ${sayGoods(signs)}`,
    }),
  );
  if (!closes && !open.some((each) => each.unreadable)) return drafts;
  const certain = signs.are === 'bind' && open.length === 0;
  const asked = open.map(sayOpenAccess).join(' ');
  const tags = [...(plain === undefined ? [] : [plain]), ...whole];
  const level = certain
    ? (levels[0] ?? 'unknown')
    : signs.are === 'bind' && open.every((each) => each.level === 'tight')
      ? 'tight'
      : 'unknown';
  return [
    ...drafts,
    {
      subject: 'access',
      kind: 'lorries',
      level,
      run: runOf(place),
      tags: Object.fromEntries(tags.map(({ key, text }) => [key, text])),
      say: [
        `Lorries: ${tags.map(({ key, text }) => `${key}=${text}`).join(', ')}.`,
        ...(asked === '' ? [] : [asked]),
        sayGoods(signs),
      ].join(' '),
      advice: open.length > 0 ? adviseOpen(open, adviseAccess(level, within)) : adviseAccess(level, within),
      aspect: 'hgv',
    },
  ];
}

/** In doubtful matches the map rule speaks instead. */
function againstOneways(input: RuleInput): Draft[] {
  return wrongWays(input)
    .filter((wrong) => !wrong.doubtful)
    .map(({ place, oneway }): Draft => {
      const { open } = oneway;
      const tag = `${oneway.key}=${oneway.text}`;
      const certain = oneway.allowed === 'no';
      const why = open === undefined ? '' : ` It is not settled here: ${open.why}.`;
      return {
        subject: 'access',
        kind: 'one-way',
        level: certain ? 'barred' : (open?.level ?? 'unknown'),
        run: runOf(place),
        tags: { [oneway.key]: oneway.text },
        say: certain
          ? `The drive runs against this one-way road (${tag}).`
          : `The permitted direction is not settled (${tag}).${why}`,
        advice: certain
          ? 'Plan the drive along the permitted direction.'
          : open === undefined
            ? 'Look for the sign, or take another road.'
            : adviseOpen([open], 'Look for the sign, or take another road.'),
        aspect: 'oneway',
      };
    });
}

function brokenTurns(input: RuleInput): Draft[] {
  return input.drive.brokenTurns.flatMap(({ atM, restriction }): Draft[] => {
    const place = turnPlace(input, restriction, atM);
    const rule = turnRuleFor(restriction.tags, () => contextsAt(input, place, false));
    if (rule.binds === 'no') return [];
    const certain = rule.binds === 'yes';
    const words = (rule.value ?? rule.text).replaceAll('_', ' ');
    const { open } = rule;
    const why = open === undefined ? '' : ` It is open: ${open.why}.`;
    const look = 'Look for the sign before turning.';
    return [
      {
        subject: 'access',
        kind: 'turn restriction',
        level: certain ? 'barred' : (open?.level ?? 'unknown'),
        run: runOf(place),
        tags: { [rule.key]: rule.text },
        say: certain
          ? `The turn driven here is forbidden (${words}).${sayClause(rule.clause)}`
          : `A turn restriction is mapped here and not settled ("${rule.key}=${rule.text}").${why}`,
        advice: certain
          ? 'Plan the drive without this turn.'
          : open === undefined
            ? look
            : adviseOpen([open], look),
      },
    ];
  });
}

function turnPlace(input: RuleInput, { id, tags }: TurnRestriction, atM: number): Place {
  const leg = input.drive.legs.find((one) => one.kind === 'stretch' && one.toM >= atM - 0.01);
  const wayTags = (leg?.kind === 'stretch' ? input.roads.ways.tags[leg.way] : undefined) ?? {};
  return {
    type: 'relation',
    id,
    index: -1,
    tags,
    forward: true,
    fromM: atM,
    toM: atM,
    road: roadName(wayTags),
    wayTags,
  };
}
