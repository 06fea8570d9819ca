import { readFile } from 'node:fs/promises';
import { given } from '../../../geo/given.ts';
import type { Faces } from '../../../geo/handover/page/whole-page.ts';
import { builtFile } from '../built-file.ts';

/** The face's files, each where the program was built, or in the package it comes from. */
const FILES = { regular: 'b612-latin-400-normal.woff2', bold: 'b612-latin-700-normal.woff2' } as const;

/** The program's face for pages that bring it along. Where a file is missing the pages use the system's. */
export async function readFaces(): Promise<Faces> {
  const [regular, bold] = await Promise.all([readFace(FILES.regular), readFace(FILES.bold)]);
  return given({ regular, bold });
}

async function readFace(name: string): Promise<string | undefined> {
  for (const place of [builtFile(`faces/${name}`), inPackage(name)])
    try {
      if (place !== undefined) return (await readFile(place)).toString('base64');
    } catch {
      // the next place, or none
    }
  return undefined;
}

function inPackage(name: string): URL | undefined {
  try {
    return new URL(import.meta.resolve(`@fontsource/b612/files/${name}`));
  } catch {
    return undefined;
  }
}
