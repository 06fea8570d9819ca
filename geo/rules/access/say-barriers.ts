import type { Tags } from '../../roads/roads.ts';
import type { AccessTag } from '../../tags/access.ts';
import type { OpenCondition } from '../../tags/resolve.ts';
import type { Words } from '../words.ts';
import { sayOpenAccess } from './say-access.ts';

function nameOf(tags: Tags): string {
  const kind = (tags['barrier'] ?? 'barrier').replaceAll('_', ' ');
  if (kind === 'yes') return 'A barrier';
  if (kind === 'debris') return 'Debris';
  return `${/^[aeiou]/.test(kind) ? 'An' : 'A'} ${kind}`;
}

/** A road drawn as a barrier. */
export function sayBarrierWay(kind: string): Words {
  return {
    say: `The road is mapped as a barrier along its whole line (barrier=${kind}).`,
    advice: 'Look before you rely on it.',
  };
}

/** @param access what is mapped on the barrier */
export function sayBarrierAccess(tags: Tags, access: string): string {
  return `${nameOf(tags)} on the road. ${access}`;
}

/** A barrier that shuts the road, and conditions that may open it. */
export function sayMayOpen(tags: Tags, open: readonly OpenCondition<AccessTag>[]): string {
  const whether = open.map((each) =>
    each.understood ? `Whether it is open when you pass is not settled: ${each.why}.` : sayOpenAccess(each),
  );
  return sayBarrierAccess(tags, whether.join(' '));
}

/** @param say what it would mean on the driven road */
export function sayAtJunction(say: string): Words {
  return {
    say: `${say} It is mapped on a junction and may stand on the side road.`,
    advice: 'Look before you rely on it.',
  };
}

/** @param made whether it is made to be opened */
export function sayPerhapsShut(tags: Tags, made: 'to open' | 'to stand'): Words {
  const locked = tags['locked'] === 'yes' ? ', and has it locked' : '';
  return {
    say: `${nameOf(tags)} on the road; the map does not say whether ${made === 'to open' ? 'it opens' : 'vehicles get through'}${locked}.`,
    advice: `Find out whether ${made === 'to open' ? 'it is open' : 'vehicles get through'}, or take another road.`,
  };
}

export function sayShut(tags: Tags): Words {
  return {
    say: `${nameOf(tags)} on the road: no way through for motor vehicles.`,
    advice: 'Take another road.',
  };
}

/** Something is mapped as wide as a gap that would do. */
export function sayPerhapsGap(tags: Tags): Words {
  return {
    say: `${nameOf(tags)} on the road; "width=${tags['width']}" may be the gap left to drive through.`,
    advice: 'Find out whether the gap is that wide, or take another road.',
  };
}

export const WIDTH_BAR: Words = {
  say: 'A width restrictor on the road; the map does not give the width it leaves.',
  advice: 'Find out its width before driving there. Most are made to let cars through and no more.',
};

export const HEIGHT_BAR: Words = {
  say: 'A height bar on the road; the map does not give its height.',
  advice: 'Find out its height before driving there. Most bars stand at 2.0 to 2.3 m.',
};
