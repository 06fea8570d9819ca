/** A cell of a table: text, a number as it is, or nothing. */
export type Cell = string | number | undefined;

/** Begins of text that a spreadsheet would take for a formula. */
const FORMULA = /^[=+\-@\t\r\0]/;

/** A table as CSV (RFC 4180): each row of equal length, lines ended by CR LF; text that looks like a formula is made text. */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return String(cell);
  const plain = cell.replace(/[\r\n]+/g, ' ');
  const text = FORMULA.test(cell) ? `'${plain}` : plain;
  return /[",]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
