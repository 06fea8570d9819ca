import type { Result } from '../../../geo/result.ts';
import type { GuidePath } from '../../../geo/swing/motion/guide-path.ts';
import { readPath } from '../../../geo/swing/motion/read-path.ts';
import { readBytes } from '../files/read-bytes.ts';

const PATH_MAX_BYTES = 2_000_000;

/** Reads one path to drive from its file. */
export async function readPathFile(path: string): Promise<Result<GuidePath>> {
  const bytes = await readBytes(path, 'path', PATH_MAX_BYTES);
  if (!bytes.ok) return bytes;
  return readPath(new TextDecoder().decode(bytes.value), path);
}
