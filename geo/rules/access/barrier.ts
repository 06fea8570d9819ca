import { given } from '../../given.ts';
import type { KindOf } from '../../report/kinds.ts';
import { type Access, type AccessTag, accessConditions, carAccess, taggedAccess } from '../../tags/access.ts';
import { onlyCloses } from '../../tags/access-value.ts';
import { barrierEffect, canOpen } from '../../tags/barrier-node.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { resolveTag } from '../../tags/resolve.ts';
import { textOf } from '../../tags/text-of.ts';
import { readLength } from '../../units/read-length.ts';
import { contextsAt } from '../conditions.ts';
import { type EndRuns, reachOf, siteRuns } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { adviseOpen, wantsOf } from '../open-conditions.ts';
import { withOpens } from '../opens.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { runOf } from '../run.ts';
import type { AccessAsked } from './access-asked.ts';
import { type FreeFrom, judgeAccess } from './judge-access.ts';
import { isJunction } from './junction.ts';
import { adviseAccess } from './say-access.ts';
import {
  HEIGHT_BAR,
  sayAtJunction,
  sayBarrierAccess,
  sayBarrierWay,
  sayMayOpen,
  sayPerhapsGap,
  sayPerhapsShut,
  sayShut,
  WIDTH_BAR,
} from './say-barriers.ts';

/**
 * Barriers standing on the driven road: each kind has its own default, access or a width mapped on it overrides.
 * A height or width figure on one is judged by those subjects.
 */
export const barrier: SubjectRule = (input) => {
  const runs = siteRuns(input);
  const onNodes = passedNodes(input.drive, input.roads)
    .filter((place) => place.tags['barrier'] !== undefined)
    .flatMap((place) => judgeBarrier(input, place, runs));
  return [...onNodes, ...barrierWays(input)];
};

/** A road mapped as a barrier itself: a slip of the mapper's, or a wall; only one that is open anyway says nothing. */
function barrierWays(input: RuleInput): Draft[] {
  return drivenWays(input.drive, input.roads).flatMap((place): Draft[] => {
    const kind = place.tags['barrier'];
    if (kind === undefined || barrierEffect(kind) === 'open') return [];
    return [
      {
        subject: 'barrier',
        kind: 'along the road',
        level: 'unknown',
        wants: 'sign',
        run: runOf(place),
        tags: { barrier: kind },
        ...sayBarrierWay(kind),
        aspect: 'way',
      },
    ];
  });
}

function judgeBarrier(input: RuleInput, place: Place, runs: EndRuns): Draft[] {
  const kind = place.tags['barrier'];
  const access = judgeOnNode(input, place, runs);
  const bare = (bar: Draft): Draft[] => [
    bar,
    ...access.map((draft): Draft => ({ ...draft, aspect: draft.aspect ?? 'access' })),
  ];
  if (kind === 'height_restrictor' && !hasHeightFigure(place))
    return bare(bareBar(place, 'maxheight', { kind: 'height bar', wants: 'measure', ...HEIGHT_BAR }));
  if (kind === 'width_restrictor' && !hasWidthFigure(place))
    return bare(bareBar(place, 'maxwidth', { kind: 'width bar', wants: 'measure', ...WIDTH_BAR }));
  return access;
}

/** Access as mapped on the barrier and as its kind has it; what stands on a junction may be meant for the side road. */
function judgeOnNode(input: RuleInput, place: Place, runs: EndRuns): Draft[] {
  const deciding = taggedAccess(place) ?? carsThrough(place);
  const reach = reachOf(place, runs);
  const drafts = judgeTagged({ input, place, reach, advisedReach: reach, deciding });
  if (!drafts.some(({ level }) => level === 'barred') || !isJunction(input.roads, place.index)) return drafts;
  return drafts.map((draft) =>
    draft.level === 'barred'
      ? { ...draft, level: 'unknown', wants: 'sign', ...sayAtJunction(draft.say) }
      : draft,
  );
}

/** Cars get through what is shut by its kind: whether a motorhome does, nobody says. */
function carsThrough(place: Place): Access | undefined {
  if (barrierEffect(textOf(place.tags, 'barrier')) !== 'shut') return undefined;
  const cars = carAccess(place);
  return cars === undefined || cars.meaning === 'no' ? undefined : { ...cars, meaning: 'unknown' };
}

/** Access mapped on the barrier itself, conditions judged; what that leaves open is for its kind. */
function judgeTagged(asked: AccessAsked): Draft[] {
  const { place } = asked;
  const { said: whole, untagged, beside, free } = judgeAccess(asked);
  const said = [...(whole === undefined ? [] : [whole]), ...beside];
  const kind = untagged === 'no' ? undefined : judgeKind(asked.input, place);
  const byKind = kind && untilFree(kind, free);
  const opens = said.some(({ kind, tags }) => MAY_OPEN.has(kind) && !Object.values(tags).every(onlyCloses));
  if (untagged === 'yes' && said.length === 0) return byKind === undefined ? [] : [byKind];
  // shut by its kind, and nothing tagged opens it
  if (byKind?.level === 'barred' && untagged !== 'maybe' && !opens) return [byKind];
  if ((untagged === 'maybe' || untagged === 'unlessClosed') && byKind !== undefined)
    return [openBarrier(asked, byKind)];
  return said.map(({ aspect, ...each }, i): Draft => {
    // a bar that something nobody understands may lift
    const lifted = each.level === 'barred' && untagged !== 'no';
    return {
      ...each,
      ...(lifted ? { level: 'unknown', wants: 'sign' } : {}),
      ...aboutOf(place),
      tags: { ...pick(place.tags, ['barrier']), ...each.tags },
      say: sayBarrierAccess(place.tags, each.say),
      // the first is the barrier's own word, the others stand beside it
      ...given({ aspect: i === 0 ? undefined : (aspect ?? String(i)) }),
    };
  });
}

/** Outside the hours that open it a barrier is as its kind has it, until they come. */
function untilFree(byKind: Draft, free: FreeFrom | undefined): Draft {
  if (free === undefined) return byKind;
  const { tag, opens } = free;
  return withOpens({ ...byKind, tags: { ...byKind.tags, [tag.key]: tag.text } }, opens);
}

/** What may open a barrier that its kind shuts; a word on cars alone closes. */
const MAY_OPEN: ReadonlySet<KindOf<'access'>> = new Set(['not understood', 'lane']);

/** Its kind shuts the road, and an unsettled condition may open it. */
function openBarrier({ input, place, reach }: AccessAsked, byKind: Draft): Draft {
  const { open } = resolveTag<AccessTag>(undefined, accessConditions(place, 0), () =>
    contextsAt(input, place, reach),
  );
  return {
    ...byKind,
    level: 'unknown',
    wants: wantsOf(open),
    tags: { ...byKind.tags, ...Object.fromEntries(open.map(({ tag }) => [tag.key, tag.text])) },
    say: sayMayOpen(place.tags, open),
    advice: adviseOpen(open, adviseAccess('unknown', reach)),
  };
}

/** What a barrier of its kind does when nothing else is tagged on it. */
function judgeKind(input: RuleInput, place: Place): Draft | undefined {
  const { tags } = place;
  const kind = textOf(tags, 'barrier');
  if (kind === 'height_restrictor' || kind === 'width_restrictor') return undefined;
  const effect = barrierEffect(kind);
  if (effect === 'open') return undefined;
  const about = { ...aboutOf(place), run: runOf(place) };
  if (effect === 'unknown') {
    const opens = canOpen(kind);
    return {
      ...about,
      level: 'unknown',
      wants: opens ? 'permission' : 'sign',
      tags: pick(tags, ['barrier', 'locked']),
      ...sayPerhapsShut(tags, opens ? 'to open' : 'to stand'),
    };
  }
  // a mapped gap is for the width subject to judge
  const gaps = limitClaims({ tags, forward: place.forward }, ['width']);
  if (gaps.some(({ reading }) => !WORDS.has(reading.kind))) return undefined;
  const between = readLength(textOf(tags, 'width'), 'gap');
  const needM = input.envelope.mirrorsWidthM + input.margins.physicalWidthM;
  const shut = { ...about, tags: pick(tags, ['barrier', 'width']) };
  return between.kind === 'value' && between.value >= needM
    ? { ...shut, level: 'unknown', wants: 'measure', ...sayPerhapsGap(tags) }
    : { ...shut, level: 'barred', ...sayShut(tags) };
}

function aboutOf(place: Place) {
  return { subject: 'barrier' as const, kind: kindOf(textOf(place.tags, 'barrier')), run: runOf(place) };
}

function kindOf(kind: string): KindOf<'barrier'> {
  if (kind === 'height_restrictor') return 'height bar';
  if (kind === 'width_restrictor') return 'width bar';
  if (canOpen(kind)) return 'gate';
  return barrierEffect(kind) === 'shut' ? 'bollard' : 'other barrier';
}

function bareBar(
  place: Place,
  key: 'maxheight' | 'maxwidth',
  what: Pick<Draft<'barrier'>, 'kind' | 'wants' | 'say' | 'advice'>,
): Draft {
  return {
    subject: 'barrier',
    level: 'unknown',
    run: runOf(place),
    tags: pick(place.tags, ['barrier', key]),
    ...what,
  };
}

/** Words that stand in place of a figure. */
const WORDS: ReadonlySet<string> = new Set(['none', 'default', 'unsigned']);

function hasHeightFigure(place: Place): boolean {
  const claims = [
    ...limitClaims(place, ['height']),
    ...limitClaims({ tags: place.wayTags, forward: place.forward }, ['height']),
  ];
  return claims.some(({ binding, reading }) => binding === 'always' && !WORDS.has(reading.kind));
}

/** Where one is mapped the width subject speaks of it, words that cannot be read included. */
function hasWidthFigure({ tags, forward }: Place): boolean {
  if (tags['width'] !== undefined || tags['est_width'] !== undefined) return true;
  return limitClaims({ tags, forward }, ['width']).some(
    ({ binding, reading }) => binding === 'always' && !WORDS.has(reading.kind),
  );
}
