import { open } from 'node:fs/promises';
import { type FileKind, fileKind, HEAD_BYTES, sayForeign } from '../../../geo/document/file-kind.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { clip } from '../../../geo/units/text.ts';
import type { FileUse } from '../../contract/source.ts';

/**
 * Tells a drive from a map by what the file holds, by its name only where that says nothing. What is neither for certain
 * is refused with what it is and what to do.
 */
export async function fileUse(path: string, name: string): Promise<Result<FileUse>> {
  const handle = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return useOf(fileKind(buffer.subarray(0, bytesRead)), name);
  } finally {
    await handle.close();
  }
}

function useOf(kind: FileKind, name: string): Result<FileUse> {
  const foreign = sayForeign(kind, name);
  if (foreign !== undefined) return fail('foreign-file', foreign);
  if (kind === 'card')
    return fail('foreign-file', `${clip(name, 80)} is a vehicle card. Add it under “Cards…”.`);
  if (kind === 'load')
    return fail('foreign-file', `${clip(name, 80)} is a load list. Open it in the Load view.`);
  if (kind === 'drive' || kind === 'map') return ok(kind);
  return ok(/\.gpx$/i.test(name) ? 'drive' : 'map');
}
