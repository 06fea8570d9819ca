import type { KindOf } from '../../report/kinds.ts';
import type { Level } from '../../report/level.ts';
import type { AccessMeaning } from '../../tags/access-value.ts';
import type { Reach } from '../../tags/conditional/context.ts';
import type { AccessAsked } from './access-asked.ts';

/** Nothing to say. */
const FREE = undefined;

const LEVELS: Readonly<Record<AccessMeaning, Readonly<Record<Reach, Level | undefined>>>> = {
  open: { through: FREE, within: FREE },
  no: { through: 'barred', within: 'barred' },
  private: { through: 'barred', within: 'unknown' },
  permit: { through: 'barred', within: 'unknown' },
  destination: { through: 'barred', within: FREE },
  discouraged: { through: 'tight', within: 'care' },
  unknown: { through: 'unknown', within: 'unknown' },
};

/** Where the drive goes, as `AccessAsked` has it. */
export type Reaches = Pick<AccessAsked, 'reach' | 'advisedReach'>;

/** How bad a meaning is, passing through or within the unbroken run at the drive's start or end; undefined: open to us. */
export function accessLevel(meaning: AccessMeaning, { reach, advisedReach }: Reaches): Level | undefined {
  return LEVELS[meaning][meaning === 'discouraged' ? advisedReach : reach];
}

/** Whether it keeps us out, or may: not where it lets us in, even against advice. */
export function mayClose(meaning: AccessMeaning, reaches: Reaches): boolean {
  return meaning !== 'discouraged' && accessLevel(meaning, reaches) !== undefined;
}

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
