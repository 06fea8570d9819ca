import type { Tags } from '../roads/roads.ts';

/** Whether the driven direction is with the mapped one: `unsure` where it turns by the hour or is not said clearly. */
export interface Oneway {
  readonly allowed: 'yes' | 'no' | 'unsure';
  readonly key: string;
  readonly text: string;
}

/** From the most specific to the least, as access. */
const KEYS = ['oneway:motorhome', 'oneway:motor_vehicle', 'oneway:vehicle', 'oneway'];

const FORWARD = new Set(['yes', 'true', '1']);
const BACKWARD = new Set(['-1', 'reverse']);
const BOTH = new Set(['no', 'false', '0', 'alternating']);

/**
 * Whether a way may be driven in the given direction along its drawn order.
 * Roundabouts and motorways are one-way unsaid; a circular junction or a motorway's link only probably.
 */
export function onewayFor(tags: Tags, forward: boolean): Oneway {
  for (const key of KEYS) {
    const text = tags[key];
    if (text === undefined) continue;
    if (BOTH.has(text)) return { allowed: 'yes', key, text };
    if (FORWARD.has(text)) return { allowed: forward ? 'yes' : 'no', key, text };
    if (BACKWARD.has(text)) return { allowed: forward ? 'no' : 'yes', key, text };
    return { allowed: 'unsure', key, text };
  }
  if (forward) return { allowed: 'yes', key: '', text: '' };
  const { junction, highway } = tags;
  if (junction === 'roundabout') return { allowed: 'no', key: 'junction', text: junction };
  if (highway === 'motorway') return { allowed: 'no', key: 'highway', text: highway };
  if (junction === 'circular') return { allowed: 'unsure', key: 'junction', text: junction };
  if (highway === 'motorway_link') return { allowed: 'unsure', key: 'highway', text: highway };
  return { allowed: 'yes', key: '', text: '' };
}
