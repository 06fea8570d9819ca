import type { KindOf } from '../../report/kinds.ts';
import type { Level } from '../../report/report.ts';
import type { Tags } from '../../roads/roads.ts';
import type { Access, AccessDoubt, AccessTag } from '../../tags/access.ts';
import type { AccessMeaning } from '../../tags/access-value.ts';
import type { OpenCondition } from '../../tags/resolve.ts';
import { builtFor } from '../../tags/road-class.ts';
import type { Draft } from '../finding.ts';

/** What is said of a place's access, without its place. */
export type AccessWords = Omit<Draft<'access'>, 'run' | 'subject'>;

/** What kind of finding a meaning makes; an open road makes none. */
export const KIND_OF_MEANING: Readonly<Record<AccessMeaning, KindOf<'access'>>> = {
  open: 'unclear',
  no: 'closed',
  private: 'private',
  permit: 'permit',
  destination: 'no through traffic',
  discouraged: 'unsuitable',
  unknown: 'unclear',
};

const WHO: Readonly<Record<string, string>> = {
  motorhome: 'motorhomes',
  motor_vehicle: 'motor vehicles',
  vehicle: 'vehicles',
  access: 'everyone',
};

/** What a way's or barrier's access means here, in one sentence. */
export function sayAccess(access: Access, within: boolean, tags: Tags): string {
  const tag = `${access.key}=${access.asMapped ?? access.text}`;
  const through = within ? 'the drive starts or ends there' : 'and the drive passes through';
  switch (access.meaning) {
    case 'open':
      return `Open (${tag}).`;
    case 'no': {
      const road = builtFor(tags);
      if (access.rank === 0 && road.kind === 'closed') return `This is ${road.what} (${tag}).`;
      return `Closed to ${WHO[access.key.split(':')[0] ?? ''] ?? 'motor vehicles'} (${tag}).`;
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
  if (access.key === 'motorcar') return `${tag} is mapped, and nothing for motorhomes.`;
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
    case 'goods':
      return `${tag} is said of goods vehicles; in some countries such signs bind a motorhome over 3.5 t.`;
  }
}

/** What to do about access. @param within the drive starts or ends there */
export function adviseAccess(level: Level, within: boolean): string {
  if (level === 'barred') return 'Take another road.';
  if (level === 'care') return 'Take another road if there is one.';
  return within
    ? 'Ask whoever holds the ground before driving in.'
    : 'Look for the sign, or take another road.';
}

/** The sentence for an access tag whose condition is not settled. */
export function sayOpenAccess({ tag, why, level, unreadable }: OpenCondition<AccessTag>): string {
  if (level === 'tight') return `Whether this holds when you pass is not settled: ${why}.`;
  const text = `"${tag.key}=${tag.text}"`;
  return unreadable ? `${text} ${why}.` : `${text} is not settled: ${why}.`;
}
