import { cut } from '../../../geo/units/text.ts';

/** A name over as many lines as there is room for, broken between words; what is left is cut off. */
export function inLines(name: string, letters: number, most: number): string[] {
  const lines: string[] = [];
  let rest = name;
  while (rest.length > letters && lines.length < most - 1) {
    const at = rest.lastIndexOf(' ', letters);
    if (at <= 0) break;
    lines.push(rest.slice(0, at));
    rest = rest.slice(at + 1);
  }
  return [...lines, cut(rest, letters)];
}
