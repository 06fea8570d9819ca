import { join } from 'node:path';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { decodeBlock } from '../../../geo/shelf/decode-block.ts';
import { LAYER } from '../../../geo/shelf/layers.ts';
import { decodeNameKeys, decodeNames } from '../../../geo/shelf/names.ts';
import { codeOf } from '../files/system-error.ts';
import { openPartOrNot } from './open-shelf.ts';
import type { OpenPart } from './read-part.ts';
import type { FoundMap } from './shelf-folder.ts';

/** What reading all of a map found. */
export interface Verified {
  readonly name: string;
  readonly state: 'ready' | 'damaged';
  readonly blocks: number;
  /** blocks that are not what was written; all of a part that does not open count as one */
  readonly damagedBlocks: number;
}

export interface VerifyHooks {
  onProgress?(share: number): void;
  /** lets other work in, and throws when the work was given up */
  pause(): Promise<void>;
}

/** Reads all of a map and holds it against its checksums. Writes nothing. */
export async function verifyMap(map: FoundMap, { onProgress, pause }: VerifyHooks): Promise<Verified> {
  const { name, folder, manifest } = map;
  let blocks = 0;
  let damagedBlocks = manifest === undefined ? 1 : 0;
  const parts = manifest?.parts ?? [];
  for (const [i, { file, bytes }] of parts.entries()) {
    const part = openPartOrNot(join(folder, file));
    if (part === undefined || part.fileBytes !== bytes) {
      damagedBlocks++;
      part?.close();
      continue;
    }
    try {
      const { count } = part.directory;
      blocks += count;
      for (let place = 0; place < count; place++) {
        if (!isSound(part, place)) damagedBlocks++;
        onProgress?.((i + place / count) / parts.length);
        await pause();
      }
    } finally {
      part.close();
    }
  }
  return { name, state: damagedBlocks > 0 ? 'damaged' : 'ready', blocks, damagedBlocks };
}

function isSound(part: OpenPart, place: number): boolean {
  try {
    const bytes = part.block(place);
    const layer = part.directory.layer[place];
    if (layer === LAYER.names) decodeNames(bytes);
    else if (layer === LAYER.nameKeys) decodeNameKeys(bytes);
    else decodeBlock(bytes);
    return true;
  } catch (thrown) {
    if (thrown instanceof Refusal || codeOf(thrown) !== undefined) return false;
    throw thrown;
  }
}
