import type { Level } from '../../report/level.ts';
import type { Tags } from '../../roads/roads.ts';
import type { Access, AccessDoubt, AccessTag } from '../../tags/access.ts';
import type { Reach } from '../../tags/conditional/context.ts';
import type { LaneLimit } from '../../tags/lanes.ts';
import type { OnewayThen } from '../../tags/oneway.ts';
import type { OpenCondition, Tagged } from '../../tags/resolve.ts';
import { builtFor } from '../../tags/road-class.ts';
import { sayClause } from '../../tags/say-condition.ts';
import type { TurnRule } from '../../tags/turn-restriction.ts';
import { beforeFirst, lowerFirst } from '../../units/text.ts';
import { adviseOpen } from '../open-conditions.ts';
import type { Words } from '../words.ts';

const WHO: Readonly<Record<string, string>> = {
  motorhome: 'motorhomes',
  motor_vehicle: 'motor vehicles',
  vehicle: 'vehicles',
  access: 'everyone',
};

/** What a way's or barrier's access means here, in one sentence. */
export function sayAccess(access: Access, reach: Reach, tags: Tags): string {
  const tag = `${access.key}=${access.asMapped ?? access.text}`;
  const through = reach === 'within' ? 'the drive starts or ends there' : 'and the drive passes through';
  switch (access.meaning) {
    case 'open':
      return `Open (${tag}).`;
    case 'no': {
      const road = builtFor(tags);
      if (access.rank === 0 && road.kind === 'closed') return `This is ${road.what} (${tag}).`;
      return `Closed to ${WHO[beforeFirst(access.key, ':')] ?? 'motor vehicles'} (${tag}).`;
    }
    case 'private':
      return `Private (${tag}), ${through}.`;
    case 'permit':
      return access.text === 'permit'
        ? `With a permit only (${tag}), ${through}.`
        : `For ${access.text.replaceAll(';', ' or ')} traffic only (${tag}), ${through}.`;
    case 'destination':
      return access.text === 'customers'
        ? `For customers only (${tag}), ${through}.`
        : `No through traffic (${tag}), ${through}.`;
    case 'discouraged':
      return `Signed as unsuitable (${tag}).`;
    case 'unknown':
      return sayUnknown(access, tag);
  }
}

function sayUnknown(access: Access, tag: string): string {
  if (access.key === 'route') return 'The map does not say whether this ferry takes motor vehicles.';
  if (access.key === 'highway') return `The map does not say who may drive here (${tag}).`;
  if (access.key.startsWith('motorcar')) return `${tag} is mapped, and nothing for motorhomes.`;
  if (access.key === 'access') return `"${tag}" does not settle whether motor vehicles may drive here.`;
  return `"${tag}" is no access value that is understood.`;
}

/** The sentence for an access tag that does not settle the matter. */
export function sayDoubt(doubt: AccessDoubt): string {
  const tag = `"${doubt.key}=${doubt.text}"`;
  switch (doubt.binding) {
    case 'condition':
      return `${tag} holds under a condition that is not settled here.`;
    case 'lane':
      return `${tag} differs from lane to lane and is not settled here.`;
    case 'notUnderstood':
      return `${tag} is about access and is not understood.`;
    case 'motorcar':
      return `${tag} is mapped, and nothing for motorhomes.`;
    case 'misspelt':
      return `${tag} is mapped, and there is no such key: "${doubt.meant ?? ''}" was likely meant.`;
  }
}

/** What to do about access. */
export function adviseAccess(level: Level, reach: Reach): string {
  if (level === 'barred') return 'Take another road.';
  if (level === 'tight' || level === 'care') return 'Take another road if there is one.';
  return reach === 'within'
    ? 'Ask whoever holds the ground before driving in.'
    : 'Look for the sign, or take another road.';
}

/** The sentence for an access tag whose condition is not settled. */
export function sayOpenAccess({ tag, why, understood, unreadable }: OpenCondition<AccessTag>): string {
  if (understood) return `Whether this holds when you pass is not settled: ${why}.`;
  const text = `"${tag.key}=${tag.text}"`;
  return unreadable ? `${text} ${why}.` : `${text} is not settled: ${why}.`;
}

/** Some lanes are closed to us, others not. */
export function saySomeLanes({ key, text }: Tagged, lanes: LaneLimit): Words {
  const { boundLanes, boundAt, freeLanes, freeAt } = lanes;
  return {
    say: `Not all lanes are for us: ${boundLanes} ${boundAt.length > 1 ? 'are' : 'is'} closed ("${key}=${text}").`,
    advice: `Keep to ${freeAt.length > 1 ? 'one of ' : ''}${freeLanes}.`,
  };
}

export function sayNoLane({ key, text }: Tagged, { boundLanes }: LaneLimit): string {
  return `Closed to us on ${boundLanes} ("${key}=${text}").`;
}

export function sayLanesUnreadable({ key, text }: Tagged): string {
  return `"${key}=${text}" is no access that is understood on every lane.`;
}

/** @param goods why signs for goods vehicles count here */
export function sayLorries(
  tags: readonly Tagged[],
  open: readonly OpenCondition<AccessTag>[],
  goods: string,
): string {
  const mapped = tags.map(({ key, text }) => `${key}=${text}`).join(', ');
  return [`Lorries: ${mapped}.`, ...open.map(sayOpenAccess), goods].join(' ');
}

/** A point on the road that carries access of its own. @param say what it means */
export function sayOfPoint(say: string): string {
  return `A point on the road: ${lowerFirst(say)}`;
}

/** @param say what is mapped on a thing beside or across the road */
export function sayOfThing(say: string): Words {
  return {
    say: `${say} It is mapped on a thing beside or across the road, and may be said of that.`,
    advice: 'Look for a sign there.',
  };
}

/** @param say what is mapped on a point where roads meet */
export function sayOfJunction(say: string): Words {
  return {
    say: `${say} It is mapped on a junction and may be meant for the side road.`,
    advice: LOOK_OR_LEAVE,
  };
}

const LOOK_OR_LEAVE = 'Look for the sign, or take another road.';

/** @param say that a road is closed, which the drive may not be on at all */
export function sayClosedInDoubt(say: string): Words {
  return {
    say: `${say} But the drive may not go here: another road fits the route about as well.`,
    advice: 'Check which road is meant.',
  };
}

/** A one-way road driven against, or one whose direction is not settled. */
export function sayOneway({ key, text, allowed, open }: OnewayThen): Words {
  const tag = `${key}=${text}`;
  if (allowed === 'no')
    return {
      say: `The drive runs against this one-way road (${tag}).`,
      advice: 'Plan the drive along the permitted direction.',
    };
  const why = open === undefined ? '' : ` It is not settled here: ${open.why}.`;
  return {
    say: `The permitted direction is not settled (${tag}).${why}`,
    advice: open === undefined ? LOOK_OR_LEAVE : adviseOpen([open], LOOK_OR_LEAVE),
  };
}

/** A turn that is forbidden, or may be. */
export function sayBrokenTurn({ binds, key, text, value, clause, open }: TurnRule): Words {
  if (binds === 'yes')
    return {
      say: `The turn driven here is forbidden (${(value ?? text).replaceAll('_', ' ')}).${sayClause(clause)}`,
      advice: 'Plan the drive without this turn.',
    };
  const why = open === undefined ? '' : ` It is open: ${open.why}.`;
  const look = 'Look for the sign before turning.';
  return {
    say: `A turn restriction is mapped here and not settled ("${key}=${text}").${why}`,
    advice: open === undefined ? look : adviseOpen([open], look),
  };
}
