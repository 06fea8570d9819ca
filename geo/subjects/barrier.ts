import type { Level } from '../report.ts';
import type { Tags } from '../roads/roads.ts';
import { accessDoubts, taggedAccess } from '../tags/access.ts';
import { accessLevel } from '../tags/access-value.ts';
import { barrierEffect } from '../tags/barrier-node.ts';
import { limitClaims } from '../tags/limits.ts';
import { readLength } from '../units/read-length.ts';
import { type EndRuns, isWithin, siteRuns } from './end-runs.ts';
import { isJunction } from './junction.ts';
import { type Draft, makeFindings } from './make-finding.ts';
import { type Place, passedNodes } from './places.ts';
import type { RuleInput, SubjectRule } from './rule.ts';
import { adviseAccess, sayAccess, sayDoubt } from './say-access.ts';

/**
 * Barriers standing on the driven road: each kind has its own default, access or a width mapped on it overrides.
 * A height or width figure on one is judged by those subjects.
 */
export const barrier: SubjectRule = (input) => {
  const runs = siteRuns(input.drive, input.roads);
  const drafts = passedNodes(input.drive, input.roads)
    .filter((place) => place.tags['barrier'] !== undefined)
    .map((place) => judgeBarrier(input, place, runs))
    .filter((draft) => draft !== undefined);
  return makeFindings(input, 'barrier', drafts);
};

function judgeBarrier(input: RuleInput, place: Place, runs: EndRuns): Draft | undefined {
  const kind = place.tags['barrier'] ?? '';
  if (kind === 'height_restrictor' && !hasHeightFigure(place)) return bareHeightBar(place);
  const byAccess = judgeAccess(place, isWithin(place, runs));
  const draft = byAccess === 'untagged' ? judgeKind(input, place, kind) : byAccess;
  if (draft?.level !== 'barred' || !isJunction(input.roads, place.index)) return draft;
  return {
    ...draft,
    level: 'unproved',
    say: `${draft.say} It is mapped on a junction and may stand on the side road.`,
    advice: 'Look before you rely on it.',
  };
}

/** What access mapped on the barrier itself says; 'untagged' leaves it to the kind. */
function judgeAccess(place: Place, within: boolean): Draft | undefined | 'untagged' {
  const { tags } = place;
  const tagged = taggedAccess(tags, place.forward);
  const deciding = tagged ?? { meaning: 'open', key: '', text: '', rank: 0 };
  const doubts = accessDoubts(tags, place.forward, deciding).filter((doubt) => doubt.binding !== 'goods');
  if (tagged === undefined && doubts.length === 0) return 'untagged';
  const mapped = accessLevel(deciding.meaning, within);
  // a ban that something unsettled may lift, or a pass that something unsettled may end
  const level: Level | undefined = doubts.some(
    (doubt) => doubt.binding !== 'motorcar' || mapped === undefined,
  )
    ? 'unproved'
    : mapped;
  if (level === undefined) return undefined;
  const about = tagged === undefined ? [] : [sayAccess(tagged, within, {})];
  return {
    level,
    place,
    tags: barrierTags(tags, [deciding.key, ...doubts.map((doubt) => doubt.key)]),
    say: [`${nameOf(tags)} on the road.`, ...about, ...doubts.map(sayDoubt)].join(' '),
    advice: adviseAccess(level, within),
  };
}

function judgeKind(input: RuleInput, place: Place, kind: string): Draft | undefined {
  const { tags } = place;
  const effect = kind === 'height_restrictor' ? 'open' : barrierEffect(kind);
  if (effect === 'open') return undefined;
  if (effect === 'unknown')
    return {
      level: 'unproved',
      place,
      tags: barrierTags(tags, ['locked']),
      say: `${nameOf(tags)} on the road; the map does not say whether it opens${tags['locked'] === 'yes' ? ', and has it locked' : ''}.`,
      advice: 'Find out whether it is open, or take another road.',
    };
  // a mapped gap is for the width subject to judge
  if (limitClaims(tags, ['width'], place.forward).length > 0) return undefined;
  const between = readLength(tags['width'] ?? '');
  const needM = input.envelope.mirrorsWidthM + input.margins.physicalWidthM;
  const mayPass = between.kind === 'value' && between.value >= needM;
  return {
    level: mayPass ? 'unproved' : 'barred',
    place,
    tags: barrierTags(tags, ['width']),
    say: mayPass
      ? `${nameOf(tags)} on the road; "width=${tags['width']}" may be the gap left to drive through.`
      : `${nameOf(tags)} on the road: no way through for motor vehicles.`,
    advice: mayPass ? 'Find out whether the gap is that wide, or take another road.' : 'Take another road.',
  };
}

function hasHeightFigure(place: Place): boolean {
  const claims = [
    ...limitClaims(place.tags, ['height'], place.forward),
    ...limitClaims(place.wayTags, ['height'], place.forward),
  ];
  const words = ['none', 'default', 'unsigned'];
  return claims.some((claim) => !words.includes(claim.reading.kind));
}

function bareHeightBar(place: Place): Draft {
  return {
    level: 'unproved',
    place,
    tags: barrierTags(place.tags, ['maxheight']),
    say: 'A height bar on the road; the map does not give its height.',
    advice: 'Find out its height before driving there. Most bars stand at 2.0 to 2.3 m.',
  };
}

function nameOf(tags: Tags): string {
  const kind = (tags['barrier'] ?? 'barrier').replaceAll('_', ' ');
  if (kind === 'yes') return 'A barrier';
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
