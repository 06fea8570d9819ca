/** Sets a tag; a key that is a name of JavaScript's own stays an ordinary key. */
export function setTag(tags: Record<string, string>, key: string, value: string): void {
  if (key === '__proto__')
    Object.defineProperty(tags, key, { value, enumerable: true, configurable: true, writable: true });
  else tags[key] = value;
}
