import { stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { readAsKept } from '../files/read-as-kept.ts';
import { sha256Of } from '../files/sha256.ts';
import type { KeptIn, Library } from './library.ts';
import { sayUnwritten } from './say-library.ts';
import { writeOnce } from './write-once.ts';

const BYTES_MAX = 256 * 1024 * 1024;
const WHAT: Readonly<Record<KeptIn, { readonly ending: string; readonly what: string }>> = {
  gpx: { ending: '.gpx', what: 'drive' },
  handed: { ending: '', what: 'file handed over' },
};

/** The files of a library that are kept byte for byte. @param passing where they are written first */
export function keptBytes(
  folder: string,
  passing: string,
): Pick<Library, 'keepBytes' | 'readBytes' | 'pathOf'> {
  const pathOf = (where: KeptIn, sha256: string) => join(folder, where, `${sha256}${WHAT[where].ending}`);
  return {
    pathOf,
    async keepBytes(where, bytes) {
      const sha256 = sha256Of(bytes);
      const path = pathOf(where, sha256);
      try {
        const was = await stat(path).catch(() => undefined);
        await writeOnce(path, bytes, passing);
        // it is wanted anew: whoever empties the bin leaves it
        if (was) await utimes(path, new Date(), new Date()).catch(() => {});
        return ok(sha256);
      } catch (error) {
        return fail('not-saved', sayUnwritten(folder, error));
      }
    },
    async readBytes(where, sha256): Promise<Result<Uint8Array>> {
      return readAsKept({
        path: pathOf(where, sha256),
        what: WHAT[where].what,
        mostBytes: BYTES_MAX,
        sha256,
      });
    },
  };
}
