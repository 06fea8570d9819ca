import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { makeFolders } from '../files/make-folders.ts';
import { replaceFile } from '../files/replace-file.ts';

/** Keeps a load list as a file of its own that the window can open. @returns where it lies */
export async function keepOtherLoad(
  folder: string,
  items: readonly LoadItem[],
  vehicleName: string | undefined,
): Promise<string> {
  const text = `${JSON.stringify({ format: 'lanegauge.load', version: 1, items }, null, 2)}\n`;
  const aside = join(folder, 'other-versions');
  await makeFolders(aside);
  // by its content: the same list is kept once
  const mark = createHash('sha256').update(text).digest('hex').slice(0, 12);
  const path = join(aside, `load-${plain(vehicleName)}${mark}.json`);
  await replaceFile(path, text);
  return path;
}

/** What of a name can stand in a file's name everywhere. */
function plain(name = ''): string {
  const kept = name
    .normalize('NFKD')
    .replaceAll(/[^A-Za-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 40);
  return kept === '' ? '' : `${kept}-`;
}
