import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import { Cancelled } from '../../map/map-reading.ts';
import { sourceLost } from './stopped.ts';

/** Little enough that whoever else needs the thread waits for less than a millisecond. */
const PIECE_BYTES = 512 * 1024;

/** SHA-256 of a file, hexadecimal, worked out piece by piece beside other work. Throws Stopped or Cancelled. */
export async function hashFile(path: string, signal: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  const piece = Buffer.allocUnsafeSlow(PIECE_BYTES);
  try {
    const handle = await open(path);
    try {
      for (;;) {
        if (signal.aborted) throw new Cancelled();
        const { bytesRead } = await handle.read(piece, 0, PIECE_BYTES);
        if (bytesRead === 0) return hash.digest('hex');
        hash.update(piece.subarray(0, bytesRead));
      }
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (error instanceof Cancelled) throw error;
    throw sourceLost(path, error);
  }
}
