const LENGTH_MAX = 60;

/**
 * A name from map data as it is drawn: one line, without control characters and marks that turn text round,
 * and not longer than a label can be. Undefined where nothing is left.
 */
export function labelText(name: string | undefined): string | undefined {
  if (name === undefined) return undefined;
  const plain = name
    .slice(0, 400)
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (plain === '') return undefined;
  const signs = [...plain];
  return signs.length <= LENGTH_MAX ? plain : `${signs.slice(0, LENGTH_MAX - 1).join('')}…`;
}
