import type { LoadList } from '../../../geo/load/list/load-list.ts';
import { readLoad } from '../../../geo/load/list/read-load.ts';
import type { Result } from '../../../geo/result.ts';
import { LOAD_MAX_BYTES } from '../../contract/limits.ts';
import { readDocumentFile } from '../files/read-document-file.ts';

/** Reads one load list from its file. */
export async function readLoadFile(path: string): Promise<Result<LoadList>> {
  const text = await readDocumentFile(path, 'load list', LOAD_MAX_BYTES);
  return text.ok ? readLoad(text.value, path) : text;
}
