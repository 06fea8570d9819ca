import { getSystemErrorMap } from 'node:util';

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
  ENOENT: 'there is no such file or folder',
  EISDIR: 'a folder lies where a file should be',
  EEXIST: 'something of that name is there already',
  ENOTEMPTY: 'the folder is not empty',
  EBUSY: 'another program is using it',
  ETXTBSY: 'another program is using it',
  EMFILE: 'too many files are open: close other programs',
  ENFILE: 'too many files are open: close other programs',
  ENOMEM: 'there is not enough memory: close other programs',
  EFBIG: 'it is larger than the disk takes',
  ENAMETOOLONG: 'its name is too long for this disk',
  ELOOP: 'its links lead round in a circle',
  EXDEV: 'it lies on another disk',
  ESTALE: 'the shared disk has changed or is gone',
  ENODEV: 'the disk is gone',
  ENXIO: 'the disk is gone',
  ETIMEDOUT: 'it did not answer in time',
  EHOSTDOWN: 'the computer it lies on does not answer',
  EHOSTUNREACH: 'there is no way to the computer it lies on',
  ENOTCONN: 'the shared disk is not connected',
  EPIPE: 'the other side has closed',
};

/** The words of the system's own list, without its code. */
function listedWords(error: unknown): string | undefined {
  const errno = error instanceof Error && 'errno' in error ? error.errno : undefined;
  return typeof errno === 'number' ? getSystemErrorMap().get(errno)?.[1] : undefined;
}

/**
 * What went wrong, for a sentence: in plain words where there are some, else in the system's own, never by its code.
 * Every sentence about a file, a folder or a program that would not start has it from here.
 */
export function messageOf(error: unknown): string {
  const plain = PLAIN[String(codeOf(error))] ?? listedWords(error);
  if (plain !== undefined) return plain;
  const said = error instanceof Error ? error.message : String(error);
  // "EBUSY: resource busy or locked, open '/x'": the sentence names the file itself
  return said.replace(/^E[A-Z0-9]+: (.*?)(?:, \w+(?: '.*')?)?$/su, '$1');
}
