import type { Result } from '../../../geo/result.ts';
import type { GuidePath } from '../../../geo/swing/motion/guide-path.ts';
import { readPath } from '../../../geo/swing/motion/read-path.ts';
import { readDocumentFile } from '../files/read-document-file.ts';

const PATH_MAX_BYTES = 2_000_000;

/** Reads one path to drive from its file. */
export async function readPathFile(path: string): Promise<Result<GuidePath>> {
  const text = await readDocumentFile(path, 'path', PATH_MAX_BYTES);
  return text.ok ? readPath(text.value, path) : text;
}
