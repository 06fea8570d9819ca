import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';

/** The repository's own folder. */
export const ROOT = resolve(import.meta.dirname, '..', '..');

/** One file that names another, or a package. Paths are from the root, with `/`. */
export interface Edge {
  readonly from: string;
  readonly specifier: string;
  /** a file of ours, when the import is relative */
  readonly to?: string;
  /** gone once compiled: `import type`; an import of inline types alone stays and loads its file */
  readonly typeOnly: boolean;
}

/** Every source file below a folder of ours, from the root. */
export function sourcesBelow(folder: string): string[] {
  return filesBelow(folder).filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'));
}

/** Every file below a folder of ours, from the root. */
export function filesBelow(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && !entry.parentPath.includes('node_modules'))
    .map((entry) => unix(relative(ROOT, join(entry.parentPath, entry.name))));
}

export function textOf(file: string): string {
  return readFileSync(join(ROOT, file), 'utf8');
}

/** What a file imports; a worker is started by the address of its file, so that is an import too, folders are not. */
export function edgesOf(file: string): Edge[] {
  const text = textOf(file);
  const found = text.matchAll(
    /(?:\bfrom\s+|\bimport\s*\(\s*|\bimport\s+|new URL\(\s*(?=['"][^'"\n]+\.[jt]s['"]))['"]([^'"\n]+)['"]/g,
  );
  return [...found].map(({ index, 1: specifier = '' }) => ({
    from: file,
    specifier,
    typeOnly: /\b(?:import|export)\s+type\s[^;]*$/.test(text.slice(0, index)),
    ...(specifier.startsWith('.')
      ? { to: unix(relative(ROOT, resolve(ROOT, dirname(file), specifier))) }
      : {}),
  }));
}

function unix(path: string): string {
  return path.split(sep).join('/');
}
