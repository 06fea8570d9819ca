import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

// compiled, this file lies in .build
const FOLDER = fileURLToPath(
  new URL(
    import.meta.url.includes('/.build/') ? '../../../../sample-routes/' : '../../../sample-routes/',
    import.meta.url,
  ),
);

/** The files of a folder of the sample, smallest first. */
export function sampleFiles(folder: string): Uint8Array[] {
  return readdirSync(join(FOLDER, folder))
    .map((name) => Uint8Array.from(readFileSync(join(FOLDER, folder, name))))
    .sort((a, b) => a.length - b.length);
}

export const samplePath = (path: string): string => join(FOLDER, path);
