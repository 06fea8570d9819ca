import { hash } from 'node:crypto';
import { fail, type Result } from '../../../geo/result.ts';
import { readBytes } from './read-bytes.ts';

/** A file, and what is known of it. */
interface KeptFile {
  readonly path: string;
  /** for the sentences */
  readonly what: string;
  readonly mostBytes: number;
  /** of its bytes when it was kept, lowercase hexadecimal; left out where nobody knows it */
  readonly sha256?: string | undefined;
}

/** Reads a file; one that is no longer what was kept is refused. */
export async function readAsKept({ path, what, mostBytes, sha256 }: KeptFile): Promise<Result<Uint8Array>> {
  const read = await readBytes(path, what, mostBytes);
  if (sha256 === undefined) return read;
  if (!read.ok)
    return read.error.code === 'missing'
      ? fail(
          'library.gone',
          `The library’s own copy of ${path} is not there: its disk is not connected, or somebody has taken it away. Connect the disk, and try again.`,
        )
      : read;
  if (hash('sha256', read.value) === sha256) return read;
  return fail(
    'library.changed',
    `${path} is not what was kept: it was changed or cut off. Put the file there again, or add it to the library anew.`,
  );
}
