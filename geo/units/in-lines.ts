import { cut } from './text.ts';

/**
 * A text over as many lines as there is room for, broken between words; what is left of it is cut off.
 * @param letters room of a line, or of the first and of those after it
 * @param most lines, one at the least
 */
export function inLines(text: string, letters: number | readonly [number, number], most: number): string[] {
  const [first, after] = typeof letters === 'number' ? [letters, letters] : letters;
  const lines: string[] = [];
  let rest = text;
  let room = first;
  while (rest.length > room && lines.length < most - 1) {
    const at = rest.lastIndexOf(' ', room);
    if (at <= 0) break;
    lines.push(rest.slice(0, at));
    rest = rest.slice(at + 1);
    room = after;
  }
  return [...lines, cut(rest, room)];
}
