import type { Tags } from '../roads/roads.ts';

/** What is mapped under a key, as written; nothing ('') where it is not mapped. */
export function textOf(tags: Tags, key: string): string {
  return tags[key] ?? '';
}
