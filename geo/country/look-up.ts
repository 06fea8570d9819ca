/** The table's own entry for a key from a map file; words every object knows ("constructor") are no entries. */
export function lookUp<T>(table: Readonly<Record<string, T>>, key: string | undefined): T | undefined {
  return key !== undefined && Object.hasOwn(table, key) ? table[key] : undefined;
}
