import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { FACE_FILES } from '../../../../main/services/hand-over/face-files.ts';
import { readFaces } from '../../../../main/services/hand-over/faces.ts';

const FACES = resolve(import.meta.dirname, '../../../../node_modules/@fontsource');

function codes(signs: string): number[] {
  return signs.split(',').flatMap((range) => {
    const [from = '', to = from] = range.replace('U+', '').split('-');
    const first = Number.parseInt(from, 16);
    return Array.from({ length: Number.parseInt(to, 16) - first + 1 }, (_, i) => first + i);
  });
}

it('every face has its files, and the letters that its package says it has', () => {
  for (const { package: from, regular, bold, signs } of FACE_FILES) {
    for (const file of [regular, bold]) expect(existsSync(join(FACES, from, 'files', file)), file).toBe(true);
    if (signs === undefined) continue;
    const parts: Record<string, string> = JSON.parse(readFileSync(join(FACES, from, 'unicode.json'), 'utf8'));
    const all = new Set(Object.values(parts).flatMap(codes));
    expect(codes(signs).filter((code) => !all.has(code))).toEqual([]);
  }
});

it('the faces that pages bring along are read whole', async () => {
  const { regular, bold, more = [] } = await readFaces();
  // "wOF2", as the format begins (W3C WOFF 2.0, §4.1)
  for (const file of [regular, bold, ...more.flatMap((face) => [face.regular, face.bold])])
    expect(file?.slice(0, 5)).toBe('d09GM');
});
