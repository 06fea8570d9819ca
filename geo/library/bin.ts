import type { Item } from './item.ts';

/** What is deleted can be had back for so long. */
export const BIN_DAYS = 90;
const DAY_MS = 86_400_000;

/** Whether an item lies in the bin: deleted, and nowhere changed at the same time. */
export function isDeleted({ versions }: Item): boolean {
  return versions.length === 0;
}

/**
 * Whether a deleted item has lain long enough for what it held to be thrown away. By a clock that is a day off it may
 * go a day early or late; one that tells no time, or a time to come, keeps it.
 * @param nowMs Unix time
 * @param deletedMs when it was deleted, NaN where nobody tells
 */
export function isDue(nowMs: number, deletedMs: number): boolean {
  return nowMs - deletedMs > BIN_DAYS * DAY_MS;
}
