import type { LoadList } from '../../../geo/load/list/load-list.ts';
import { readLoad } from '../../../geo/load/list/read-load.ts';
import type { Result } from '../../../geo/result.ts';
import { LOAD_MAX_BYTES } from '../../contract/limits.ts';
import { readBytes } from '../files/read-bytes.ts';

/** Reads one load list from its file. */
export async function readLoadFile(path: string): Promise<Result<LoadList>> {
  const bytes = await readBytes(path, 'load list', LOAD_MAX_BYTES);
  if (!bytes.ok) return bytes;
  return readLoad(new TextDecoder().decode(bytes.value), path);
}
