import { mkdir } from 'node:fs/promises';
import { fail, ok } from '../../../geo/result.ts';
import type { ImportPart } from '../../../main/services/shelf/put-on-shelf.ts';
import { makePart } from './make-part.ts';

/** Takes small maps in without threads, for tests of what is done with parts. */
export const importByHand: ImportPart = async ({ path }, outFile, tempFolder, { signal, onProgress }) => {
  await mkdir(tempFolder, { recursive: true });
  onProgress({ what: 'Taking the map in', share: 0.5 });
  if (signal.aborted) return fail('cancelled', 'Cancelled.');
  try {
    return ok(await makePart(path, outFile));
  } catch (error) {
    return fail('map.damaged', `${path} cannot be read: ${String(error)}`);
  }
};
