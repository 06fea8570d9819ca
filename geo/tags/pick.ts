import type { Tags } from '../roads/roads.ts';

/** The mapped ones of some keys. */
export function pick(tags: Tags, keys: readonly string[]): Record<string, string> {
  const picked: Record<string, string> = {};
  for (const key of keys) {
    const text = tags[key];
    if (text !== undefined) picked[key] = text;
  }
  return picked;
}
