/** What the system calls an error: `ENOENT` and the like. */
export function codeOf(error: unknown): unknown {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}

/** An error's own words, for a sentence. */
export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
