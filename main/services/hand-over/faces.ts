import { readFile } from 'node:fs/promises';
import { given } from '../../../geo/given.ts';
import type { Faces } from '../../../geo/handover/page/whole-page.ts';
import { builtFile } from '../built-file.ts';
import { FACE_FILES } from './face-files.ts';

/** The faces for pages that bring them along. Where a file is missing the pages use the system's. */
export async function readFaces(): Promise<Faces> {
  const read = await Promise.all(
    FACE_FILES.map(async ({ package: from, regular, bold, signs }) => {
      const [thin, thick] = await Promise.all([readFace(from, regular), readFace(from, bold)]);
      return { signs, ...given({ regular: thin, bold: thick }) };
    }),
  );
  const own = read.find(({ signs }) => signs === undefined);
  const more = read.flatMap(({ signs, ...files }) => (signs === undefined ? [] : [{ signs, ...files }]));
  return { ...given({ regular: own?.regular, bold: own?.bold }), more };
}

/** A file of a face where the program was built, or in the package it comes from. */
async function readFace(from: string, name: string): Promise<string | undefined> {
  for (const place of [builtFile(`faces/${name}`), inPackage(from, name)])
    try {
      if (place !== undefined) return (await readFile(place)).toString('base64');
    } catch {
      // the next place, or none
    }
  return undefined;
}

function inPackage(from: string, name: string): URL | undefined {
  try {
    return new URL(import.meta.resolve(`@fontsource/${from}/files/${name}`));
  } catch {
    return undefined;
  }
}
