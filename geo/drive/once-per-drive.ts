import type { Roads } from '../roads/roads.ts';
import type { Drive } from './drive.ts';

/**
 * What hangs on a drive and its roads alone, worked out once however many vehicles the drive is held against.
 * @param work pure; its answer is shared, so that nobody may change it
 */
export function oncePerDrive<T>(work: (drive: Drive, roads: Roads) => T): (drive: Drive, roads: Roads) => T {
  const known = new WeakMap<Drive, { readonly roads: Roads; readonly answer: T }>();
  return (drive, roads) => {
    const before = known.get(drive);
    if (before?.roads === roads) return before.answer;
    const answer = work(drive, roads);
    known.set(drive, { roads, answer });
    return answer;
  };
}
