import { printable } from '../../units/text.ts';

/** Markup that may stand in a page as it is: made here, every text in it escaped. */
export interface Markup {
  readonly markup: string;
}

/** What may stand between pieces of markup: texts are escaped, lists are joined, nothing leaves nothing. */
type Piece = string | number | Markup | readonly Markup[] | undefined;

/** HTML or SVG with every text put into it escaped, for content and quoted attributes alike. */
export function markup(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  let text = strings[0]!;
  for (const [i, piece] of pieces.entries()) text += pieceText(piece) + strings[i + 1]!;
  return { markup: text };
}

function pieceText(piece: Piece): string {
  if (piece === undefined) return '';
  if (typeof piece === 'number') return String(piece);
  if (typeof piece === 'string') return escapeText(piece);
  return 'markup' in piece ? piece.markup : piece.map((one) => one.markup).join('');
}

const ESCAPED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Also without characters that turn the reading direction or cannot be seen: texts are strangers'. */
function escapeText(text: string): string {
  return printable(text).replace(/[&<>"']/gu, (character) => ESCAPED[character]!);
}
