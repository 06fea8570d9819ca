/** What the system calls an error: `ENOENT` and the like. */
export function codeOf(error: unknown): unknown {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}

/** What the system most often says, in plain words. */
const PLAIN: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EROFS: 'the disk cannot be written to',
  EACCES: 'the system does not allow it',
  EPERM: 'the system does not allow it',
  ENOTDIR: 'a file lies where a folder should be',
  EIO: 'the disk does not work as it should',
};

/** What went wrong, for a sentence: in plain words where there are some, else in the system's own. */
export function messageOf(error: unknown): string {
  const plain = PLAIN[String(codeOf(error))];
  if (plain !== undefined) return plain;
  const said = error instanceof Error ? error.message : String(error);
  // "EBUSY: resource busy or locked, open '/x'": the sentence names the file itself
  return said.replace(/^E[A-Z0-9]+: (.*?)(?:, \w+(?: '.*')?)?$/su, '$1');
}
