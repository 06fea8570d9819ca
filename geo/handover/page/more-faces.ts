/** A face for letters that the program's own lacks, as files in base64 (WOFF2), each where it is given. */
export interface MoreFace {
  /** the letters it is for, as CSS writes them: `U+400-45F,U+490` */
  readonly signs: string;
  readonly regular?: string;
  readonly bold?: string;
}

/** Of some faces those of which the text has a letter: a page brings along no more than it needs. */
export function facesFor(text: string, faces: readonly MoreFace[]): MoreFace[] {
  const letters = [...new Set(text)]
    .flatMap((sign) => sign.codePointAt(0) ?? [])
    .filter((code) => code > 0xff);
  return faces.filter(({ signs }) => {
    const ranges = readRanges(signs);
    return letters.some((code) => ranges.some(([from, to]) => code >= from && code <= to));
  });
}

function readRanges(signs: string): (readonly [from: number, to: number])[] {
  return signs.split(',').map((range) => {
    const [from = '', to = from] = range.replace('U+', '').split('-');
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)];
  });
}
