import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** A package, by the folder it lies in. */
interface Part {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** as it comes with the package */
  readonly text: string;
}

/**
 * Writes beside a bundle the licences of every package that is in it, so that they go wherever it goes.
 * @param fileName below the bundle's own folder
 * @param beside names of packages that ship with the bundle though they are not in it
 * @returns the plugin; a package without a licence text ends the build
 */
export function notices(fileName: string, beside: readonly string[] = []): Plugin {
  return {
    name: 'notices',
    generateBundle(_options, bundle) {
      const files = Object.values(bundle).flatMap((made) =>
        made.type === 'chunk' ? made.moduleIds : made.originalFileNames,
      );
      const folders = new Set(beside.map((name) => join(NODE_MODULES, name)));
      for (const file of files) {
        const folder = packageOf(file);
        if (folder !== undefined) folders.add(folder);
      }
      const parts = [...folders].map(readPart).sort((a, b) => (a.name < b.name ? -1 : 1));
      this.emitFile({ type: 'asset', fileName, source: print(parts) });
    },
  };
}

const ROOT = join(import.meta.dirname, '../..');
const NODE_MODULES = join(ROOT, 'node_modules');

/** The folder of the package in which a file lies, be it within another package; files are named from anywhere above. */
function packageOf(file: string): string | undefined {
  const [inside] =
    /node_modules\/(?:.*\/node_modules\/)?(?:@[^/]+\/)?[^/]+/u.exec(file.replaceAll('\\', '/')) ?? [];
  return inside === undefined ? undefined : join(ROOT, inside);
}

function readPart(folder: string): Part {
  const { name, version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const own = readdirSync(folder).find((entry) => /^licen[cs]e(?:[.-]|$)/iu.test(entry));
  const file = [own ?? '', join('LICENSES', `${license}.txt`)].find((entry) => isFile(join(folder, entry)));
  const text = file === undefined ? TEXTS[license]?.(author) : readFileSync(join(folder, file), 'utf8');
  if (text === undefined) throw new Error(`The package ${name} brings no text of its licence (${license}).`);
  return {
    name,
    version,
    licence: license === undefined ? '' : `(${license})`,
    text: text.replaceAll('\r\n', '\n').trim(),
  };
}

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() === true;
}

/** For a package that names a licence and brings no text of its own: the licence's published text (SPDX list). */
const TEXTS: Readonly<Record<string, (author: string) => string>> = {
  ISC: (author) => `Copyright (c) ${author} and contributors

Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby granted, provided that the above copyright notice and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT, INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF THIS SOFTWARE.`,
};

function print(parts: readonly Part[]): string {
  const told = parts.map(
    ({ name, version, licence, text }) => `${[name, version, licence].join(' ').trim()}\n\n${text}`,
  );
  return `${told.join(`\n\n${'-'.repeat(72)}\n\n`)}\n`;
}
