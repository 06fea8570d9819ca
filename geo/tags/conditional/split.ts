/** A piece of a longer text and where it begins in it. */
export interface Piece {
  readonly text: string;
  readonly at: number;
}

/** The piece without the blanks around it. */
export function trimmed(piece: Piece): Piece {
  const lead = piece.text.length - piece.text.trimStart().length;
  return { text: piece.text.trim(), at: piece.at + lead };
}

/**
 * Cuts a text at every match of `separator` that stands outside round brackets and quotes.
 * @param separator sticky regular expression
 */
export function splitOutside(piece: Piece, separator: RegExp): Piece[] {
  const { text, at } = piece;
  const pieces: Piece[] = [];
  let depth = 0;
  let quoted = false;
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === '"') quoted = !quoted;
    if (quoted) continue;
    if (sign === '(') depth++;
    else if (sign === ')') depth--;
    if (depth !== 0) continue;
    separator.lastIndex = i;
    const found = separator.exec(text);
    if (found === null || found[0] === '') continue;
    pieces.push(trimmed({ text: text.slice(from, i), at: at + from }));
    from = i + found[0].length;
    i = from - 1;
  }
  pieces.push(trimmed({ text: text.slice(from), at: at + from }));
  return pieces;
}

/** Where brackets do not pair up, -1 when they do. */
export function unpairedBracket(text: string): number {
  const open: number[] = [];
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '(') open.push(i);
    else if (text[i] === ')' && open.pop() === undefined) return i;
  }
  return open[0] ?? -1;
}

/** The text inside one pair of brackets that encloses all of it; undefined when none does. */
export function insideBrackets(piece: Piece): Piece | undefined {
  const { text, at } = piece;
  if (!text.startsWith('(') || !text.endsWith(')')) return undefined;
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '(') depth++;
    else if (text[i] === ')' && --depth === 0 && i < text.length - 1) return undefined;
  }
  return trimmed({ text: text.slice(1, -1), at: at + 1 });
}
