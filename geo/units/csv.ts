import { plainLine } from './text.ts';

/** A cell of a table: a number stays one, undefined is empty. */
export type Cell = string | number | undefined;

/** Rows as RFC 4180 has them: commas, quotes doubled, lines ended by CR LF; no cell has a line break of its own. */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

/**
 * A spreadsheet takes a text that begins like this for a formula, some the wide forms of these signs too: an apostrophe
 * before it keeps it a text.
 */
const FORMULA = /^[\s\0]*[=+\-@\t\r\0\uFF1D\uFF0B\uFF0D\uFF20]/u;

function cellText(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const plain = plainLine(cell);
  const text = FORMULA.test(cell) || FORMULA.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
