/** What a server's status page says of us. */
export interface ServerStatus {
  /** questions it would take now; undefined where it does not say */
  readonly free?: number;
  /** seconds until it takes the next one, where it takes none now */
  readonly waitS?: number;
}

/**
 * Reads a status page. Its lines have moved over the years and "Rate limit: 0" means none, so each is looked for by its
 * words and none is relied on.
 */
export function readStatus(text: string): ServerStatus {
  const free = /(\d+) slots? available now/iu.exec(text)?.[1];
  const waits = [...text.matchAll(/available after:[^\n]*?\bin (-?\d+) seconds?/giu)].map(([, s]) =>
    Number(s),
  );
  if (free !== undefined && Number(free) > 0) return { free: Number(free) };
  const waitS = waits.filter((wait) => wait >= 0).sort((a, b) => a - b)[0];
  return {
    ...(free === undefined ? {} : { free: Number(free) }),
    ...(waitS === undefined ? {} : { waitS }),
  };
}
