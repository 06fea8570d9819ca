import type { Words } from '../words.ts';

/** @param name as mapped */
export function sayZone(kind: 'low emission' | 'limited traffic', name: string | undefined): Words {
  const called = name === undefined ? '' : ` (${name})`;
  if (kind === 'limited traffic')
    return {
      say: `The drive enters a zone of limited traffic${called}; who may drive there, and when, is not settled by the map.`,
      advice:
        'Ask the town or the host for a permit before the day, or go round: cameras fine by the number plate.',
    };
  return {
    say: `The drive enters a low-emission zone${called}; which vehicles it keeps out is not mapped.`,
    advice:
      'Check this vehicle’s emission class against the zone’s rules, and get the badge or pay before driving in.',
  };
}
