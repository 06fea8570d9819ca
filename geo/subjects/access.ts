import { type AccessDoubt, accessDoubts, accessFor } from '../tags/access.ts';
import { accessLevel, readAccessValue } from '../tags/access-value.ts';
import { GOODS_SIGNS_FROM_KG } from '../tags/modes.ts';
import { turnRuleFor } from '../tags/turn-restriction.ts';
import { type EndRuns, isWithin, restrictedRuns } from './end-runs.ts';
import { type Draft, makeFindings } from './make-finding.ts';
import { drivenWays, type Place, roadName } from './places.ts';
import type { RuleInput, SubjectRule } from './rule.ts';
import { adviseAccess, sayAccess, sayDoubt } from './say-access.ts';
import { wrongWays } from './wrong-way.ts';

/** Who may drive there: access of every driven way, one-way roads driven against, turn restrictions broken. */
export const access: SubjectRule = (input) => {
  const runs = restrictedRuns(input.drive, input.roads);
  return makeFindings(input, 'access', [
    ...drivenWays(input.drive, input.roads).flatMap((place) => wayAccess(input, place, runs)),
    ...againstOneways(input),
    ...onewayConditions(input),
    ...brokenTurns(input),
  ]);
};

function wayAccess(input: RuleInput, place: Place, runs: EndRuns): Draft[] {
  const within = isWithin(place, runs);
  const deciding = accessFor(place.tags, place.forward);
  const level = accessLevel(deciding.meaning, within);
  const doubts = accessDoubts(place.tags, place.forward, deciding);
  const lifting = level === 'barred' ? doubts.filter(mayLift) : [];
  const drafts: Draft[] = [];
  if (level !== undefined) {
    const lifted = lifting.length > 0 ? 'unproved' : level;
    drafts.push({
      level: lifted,
      place,
      tags: { [deciding.key]: deciding.text, ...tagsOf(lifting) },
      say: [sayAccess(deciding, within, place.tags), ...lifting.map(sayDoubt)].join(' '),
      advice: adviseAccess(lifted, within),
    });
  }
  if (level === 'barred') return drafts;
  for (const doubt of doubts)
    if (concerns(input, doubt, within))
      drafts.push({
        level: 'unproved',
        place,
        tags: tagsOf([doubt]),
        say: sayDoubt(doubt),
        advice: adviseAccess('unproved', within),
        aspect: doubt.key,
        ...(hasOpenLane(doubt) ? { folded: true } : {}),
      });
  return drafts;
}

/** A condition, a lane or an unknown form may lift a ban; what is said of siblings cannot. */
function mayLift(doubt: AccessDoubt): boolean {
  return doubt.binding !== 'motorcar' && doubt.binding !== 'goods';
}

function concerns(input: RuleInput, doubt: AccessDoubt, within: boolean): boolean {
  if (doubt.binding !== 'goods') return true;
  // which countries' signs for goods vehicles reach a motorhome is the country table's to say
  const level = accessLevel(readAccessValue(doubt.text), within);
  return input.envelope.grossKg > GOODS_SIGNS_FROM_KG && level !== undefined && level !== 'heed';
}

function hasOpenLane(doubt: AccessDoubt): boolean {
  if (doubt.binding !== 'lane') return false;
  return doubt.text.split('|').some((lane) => lane === '' || readAccessValue(lane) === 'open');
}

function tagsOf(doubts: readonly AccessDoubt[]): Record<string, string> {
  return Object.fromEntries(doubts.map((doubt) => [doubt.key, doubt.text]));
}

/** In doubtful matches the map rule speaks instead. */
function againstOneways(input: RuleInput): Draft[] {
  return wrongWays(input)
    .filter((wrong) => !wrong.doubtful)
    .map(({ place, oneway }) => {
      const tag = `${oneway.key}=${oneway.text}`;
      const certain = oneway.allowed === 'no';
      return {
        level: certain ? 'barred' : 'unproved',
        place,
        tags: { [oneway.key]: oneway.text },
        say: certain
          ? `The drive runs against this one-way road (${tag}).`
          : `The permitted direction is not settled (${tag}).`,
        advice: certain
          ? 'Plan the drive along the permitted direction.'
          : 'Look for the sign, or take another road.',
        aspect: 'oneway',
      };
    });
}

/** `oneway:conditional` may turn the road round. */
function onewayConditions(input: RuleInput): Draft[] {
  return drivenWays(input.drive, input.roads).flatMap((place) => {
    const text = place.tags['oneway:conditional'];
    if (text === undefined) return [];
    return [
      {
        level: 'unproved',
        place,
        tags: { 'oneway:conditional': text },
        say: `"oneway:conditional=${text}": one-way under a condition that is not settled here.`,
        advice: 'Look for the sign, or take another road.',
        aspect: 'oneway:conditional',
      },
    ];
  });
}

function brokenTurns(input: RuleInput): Draft[] {
  return input.drive.brokenTurns.flatMap(({ atM, restriction }) => {
    const rule = turnRuleFor(restriction.tags);
    if (rule.binds === 'no') return [];
    const leg = input.drive.legs.find((one) => one.kind === 'stretch' && one.toM >= atM - 0.01);
    const wayTags = (leg?.kind === 'stretch' ? input.roads.ways.tags[leg.way] : undefined) ?? {};
    const place: Place = {
      type: 'relation',
      id: restriction.id,
      index: -1,
      tags: restriction.tags,
      forward: true,
      fromM: atM,
      toM: atM,
      road: roadName(wayTags),
      wayTags,
    };
    const certain = rule.binds === 'yes';
    const words = rule.text.replaceAll('_', ' ');
    return [
      {
        level: certain ? 'barred' : 'unproved',
        place,
        tags: { [rule.key]: rule.text },
        say: certain
          ? `The turn driven here is forbidden (${words}).`
          : `A turn restriction is mapped here and not settled ("${rule.key}=${rule.text}").`,
        advice: certain ? 'Plan the drive without this turn.' : 'Look for the sign before turning.',
      },
    ];
  });
}
