import { given } from '../../given.ts';
import type { KindOf } from '../../report/kinds.ts';
import type { Tags } from '../../roads/roads.ts';
import { type AccessTag, accessConditions, taggedAccess } from '../../tags/access.ts';
import { barrierEffect, canOpen } from '../../tags/barrier-node.ts';
import { limitClaims } from '../../tags/limits.ts';
import { type OpenCondition, resolveTag } from '../../tags/resolve.ts';
import { readLength } from '../../units/read-length.ts';
import { contextsAt } from '../conditions.ts';
import { type EndRuns, isWithin, siteRuns } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { adviseOpen } from '../limits/hold-limits.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { runOf } from '../run.ts';
import { judgeAccess } from './judge-access.ts';
import { isJunction } from './junction.ts';
import { adviseAccess, sayOpenAccess } from './say-access.ts';

/**
 * Barriers standing on the driven road: each kind has its own default, access or a width mapped on it overrides.
 * A height or width figure on one is judged by those subjects.
 */
export const barrier: SubjectRule = (input) => {
  const runs = siteRuns(input.drive, input.roads);
  const drafts = passedNodes(input.drive, input.roads)
    .filter((place) => place.tags['barrier'] !== undefined)
    .flatMap((place) => judgeBarrier(input, place, runs));
  return [...drafts, ...barrierWays(input)];
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
        run: runOf(place),
        tags: { barrier: kind },
        say: `The road is mapped as a barrier along its whole line (barrier=${kind}).`,
        advice: 'Look before you rely on it.',
        aspect: 'way',
      },
    ];
  });
}

function judgeBarrier(input: RuleInput, place: Place, runs: EndRuns): Draft[] {
  const kind = place.tags['barrier'] ?? '';
  if (kind === 'height_restrictor' && !hasHeightFigure(place)) return [bareHeightBar(place)];
  if (kind === 'width_restrictor' && !hasWidthFigure(place)) return [bareWidthBar(place)];
  const drafts = judgeTagged(input, place, kind, isWithin(place, runs));
  if (!drafts.some((draft) => draft.level === 'barred') || !isJunction(input.roads, place.index))
    return drafts;
  return drafts.map((draft) =>
    draft.level !== 'barred'
      ? draft
      : {
          ...draft,
          level: 'unknown',
          say: `${draft.say} It is mapped on a junction and may stand on the side road.`,
          advice: 'Look before you rely on it.',
        },
  );
}

/** Access mapped on the barrier itself, conditions judged; what that leaves open is for its kind. */
function judgeTagged(input: RuleInput, place: Place, kind: string, within: boolean): Draft[] {
  const { tags } = place;
  const { words, untagged, beside } = judgeAccess(input, place, within, taggedAccess(tags, place.forward));
  const said = [...(words === undefined ? [] : [words]), ...beside];
  const byKind = untagged === 'no' ? undefined : judgeKind(input, place, kind);
  if (untagged === 'yes' && said.length === 0) return byKind === undefined ? [] : [byKind];
  const aspect = (draft: { readonly aspect?: string }, i: number) =>
    i === 0 ? {} : { aspect: draft.aspect ?? String(i) };
  if (untagged === 'maybe' && byKind !== undefined) return [openBarrier(input, place, within, byKind)];
  return said.map(
    ({ aspect: name, ...each }, i): Draft => ({
      ...each,
      // a bar that something nobody understands may lift
      level: each.level === 'care' || untagged === 'no' ? each.level : 'unknown',
      subject: 'barrier',
      kind: kindOf(kind),
      run: runOf(place),
      tags: { ...barrierTags(tags, []), ...each.tags },
      say: `${nameOf(tags)} on the road. ${each.say}`,
      ...aspect({ ...given({ aspect: name }) }, i),
    }),
  );
}

/** Its kind shuts the road, and an unsettled condition may open it. */
function openBarrier(input: RuleInput, place: Place, within: boolean, byKind: Draft): Draft {
  const { open } = resolveTag<AccessTag>(undefined, accessConditions(place.tags, place.forward, 0), () =>
    contextsAt(input, place, within),
  );
  const understood = open.every((each) => each.level === 'tight');
  return {
    ...byKind,
    level: byKind.level === 'barred' && understood ? 'tight' : 'unknown',
    tags: { ...byKind.tags, ...Object.fromEntries(open.map(({ tag }) => [tag.key, tag.text])) },
    say: [`${nameOf(place.tags)} on the road.`, ...open.map(sayOpenBarrier)].join(' '),
    advice: adviseOpen(open, adviseAccess('unknown', within)),
  };
}

function sayOpenBarrier(open: OpenCondition<AccessTag>): string {
  return open.level === 'tight'
    ? `Whether it is open when you pass is not settled: ${open.why}.`
    : sayOpenAccess(open);
}

function judgeKind(input: RuleInput, place: Place, kind: string): Draft | undefined {
  const { tags } = place;
  const effect = /^(height|width)_restrictor$/.test(kind) ? 'open' : barrierEffect(kind);
  if (effect === 'open') return undefined;
  if (effect === 'unknown')
    return {
      subject: 'barrier',
      kind: kindOf(kind),
      level: 'unknown',
      run: runOf(place),
      tags: barrierTags(tags, ['locked']),
      say: `${nameOf(tags)} on the road; the map does not say whether ${canOpen(kind) ? 'it opens' : 'vehicles get through'}${tags['locked'] === 'yes' ? ', and has it locked' : ''}.`,
      advice: 'Find out whether it is open, or take another road.',
    };
  // a mapped gap is for the width subject to judge
  if (limitClaims(tags, ['width'], place.forward).length > 0) return undefined;
  const between = readLength(tags['width'] ?? '');
  const needM = input.envelope.mirrorsWidthM + input.margins.physicalWidthM;
  const mayPass = between.kind === 'value' && between.value >= needM;
  return {
    subject: 'barrier',
    kind: kindOf(kind),
    level: mayPass ? 'unknown' : 'barred',
    run: runOf(place),
    tags: barrierTags(tags, ['width']),
    say: mayPass
      ? `${nameOf(tags)} on the road; "width=${tags['width']}" may be the gap left to drive through.`
      : `${nameOf(tags)} on the road: no way through for motor vehicles.`,
    advice: mayPass ? 'Find out whether the gap is that wide, or take another road.' : 'Take another road.',
  };
}

function kindOf(kind: string): KindOf<'barrier'> {
  if (kind === 'height_restrictor') return 'height bar';
  if (kind === 'width_restrictor') return 'width bar';
  if (canOpen(kind)) return 'gate';
  return barrierEffect(kind) === 'shut' ? 'bollard' : 'other';
}

function hasHeightFigure(place: Place): boolean {
  const claims = [
    ...limitClaims(place.tags, ['height'], place.forward),
    ...limitClaims(place.wayTags, ['height'], place.forward),
  ];
  const words = ['none', 'default', 'unsigned'];
  return claims.some(({ binding, reading }) => binding === 'always' && !words.includes(reading.kind));
}

/** Where one is mapped the width subject speaks of it, words that cannot be read included. */
function hasWidthFigure({ tags, forward }: Place): boolean {
  if (tags['width'] !== undefined || tags['est_width'] !== undefined) return true;
  const words = ['none', 'default', 'unsigned'];
  return limitClaims(tags, ['width'], forward).some(
    ({ binding, reading }) => binding === 'always' && !words.includes(reading.kind),
  );
}

function bareWidthBar(place: Place): Draft {
  return {
    subject: 'barrier',
    kind: 'width bar',
    level: 'unknown',
    run: runOf(place),
    tags: barrierTags(place.tags, ['maxwidth']),
    say: 'A width restrictor on the road; the map does not give the width it leaves.',
    advice: 'Find out its width before driving there. Most are made to let cars through and no more.',
  };
}

function bareHeightBar(place: Place): Draft {
  return {
    subject: 'barrier',
    kind: 'height bar',
    level: 'unknown',
    run: runOf(place),
    tags: barrierTags(place.tags, ['maxheight']),
    say: 'A height bar on the road; the map does not give its height.',
    advice: 'Find out its height before driving there. Most bars stand at 2.0 to 2.3 m.',
  };
}

function nameOf(tags: Tags): string {
  const kind = (tags['barrier'] ?? 'barrier').replaceAll('_', ' ');
  if (kind === 'yes') return 'A barrier';
  if (kind === 'debris') return 'Debris';
  return `${/^[aeiou]/.test(kind) ? 'An' : 'A'} ${kind}`;
}

function barrierTags(tags: Tags, keys: readonly string[]): Record<string, string> {
  const kept: Record<string, string> = {};
  for (const key of ['barrier', ...keys]) {
    const text = tags[key];
    if (text !== undefined) kept[key] = text;
  }
  return kept;
}
