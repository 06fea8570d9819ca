/** Where the files of a face come from, and which letters it is for. */
interface FaceFiles {
  /** under @fontsource */
  readonly package: string;
  readonly regular: string;
  readonly bold: string;
  /** as CSS writes them; absent for the program's own face */
  readonly signs?: string;
}

function noto(name: string, part: string, signs: string): FaceFiles {
  const file = (weight: number) => `${name}-${part}-${weight}-normal.woff2`;
  return { package: name, regular: file(400), bold: file(700), signs };
}

/**
 * The faces that pages bring along: the program's own, and for the letters it lacks another, script by script. The
 * letters are those of the packages' `unicode.json`, without the signs that the program's own face has.
 */
export const FACE_FILES: readonly FaceFiles[] = [
  { package: 'b612', regular: 'b612-latin-400-normal.woff2', bold: 'b612-latin-700-normal.woff2' },
  noto('noto-sans', 'latin-ext', 'U+100-130,U+132-151,U+154-2BA,U+1E00-1E9F,U+1EF2-1EFF'),
  noto('noto-sans', 'vietnamese', 'U+1EA0-1EF1,U+20AB'),
  noto('noto-sans', 'greek', 'U+370-377,U+37A-37F,U+384-38A,U+38C,U+38E-3A1,U+3A3-3FF'),
  noto('noto-sans', 'cyrillic', 'U+400-45F,U+490-491,U+4B0-4B1,U+2116'),
  noto('noto-sans', 'cyrillic-ext', 'U+460-48F,U+492-4AF,U+4B2-52F,U+20B4'),
  noto('noto-sans-hebrew', 'hebrew', 'U+590-5FF,U+20AA,U+FB1D-FB4F'),
  noto('noto-sans-arabic', 'arabic', 'U+600-6FF,U+750-77F,U+8E3-8FF,U+FB50-FDFF,U+FE70-FE74,U+FE76-FEFC'),
];
