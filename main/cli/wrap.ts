import { cut } from '../../geo/units/text.ts';

/** Breaks text at spaces so that no line is longer than `width`, every line indented by `indent`. */
export function wrap(text: string, width: number, indent = ''): string[] {
  const room = Math.max(20, width - indent.length);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(indent + line);
  return lines;
}

/**
 * Text from a file made safe to print: control characters (which could move the cursor or ring the bell) and
 * marks that turn the reading direction become a visible stand-in, and a very long name is cut.
 */
export function printable(text: string, longest = 120): string {
  const safe = text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '\u00B7');
  return cut(safe, longest);
}
