import type { Tags } from './roads.ts';

/** Sets a tag; a key that is a name of JavaScript's own stays an ordinary key. */
export function setTag(tags: Record<string, string>, key: string, value: string): void {
  if (key === '__proto__')
    Object.defineProperty(tags, key, { value, enumerable: true, configurable: true, writable: true });
  else tags[key] = value;
}

/** The tags of several as one set; of a key that more than one has, the last one's. */
export function mergeTags(sets: Iterable<Tags>): Record<string, string> {
  const all: Record<string, string> = {};
  for (const tags of sets) for (const key in tags) setTag(all, key, tags[key]!);
  return all;
}
