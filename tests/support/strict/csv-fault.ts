/** Quoted or plain, then a comma or a row's end (RFC 4180): a plain cell holds no quote, comma or line break. */
const CELL = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/uy;
/** What spreadsheets take for a formula; figures may be below nothing. */
const FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\uFF0B\uFF0D\uFF1D\uFF20]/u;
const FIGURE = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/u;

/**
 * Reads a table by the letter of RFC 4180: rows of one length, each ended by CR LF, nothing before or after, and no
 * cell that a spreadsheet would run. @returns what is wrong; undefined for nothing
 */
export function csvFault(table: string, rows: number): string | undefined {
  const read: string[][] = [[]];
  CELL.lastIndex = 0;
  for (let at = 0; at < table.length; at = CELL.lastIndex) {
    CELL.lastIndex = at;
    const cell = CELL.exec(table);
    if (!cell) return `no cell at ${JSON.stringify(table.slice(at, at + 80))}`;
    const text = cell[1]?.replaceAll('""', '"') ?? cell[2] ?? '';
    if (FORMULA.test(text) && !FIGURE.test(text)) return `a formula ${JSON.stringify(text.slice(0, 80))}`;
    if (/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u.test(text))
      return `a cell of several lines, or one that steers ${JSON.stringify(text.slice(0, 80))}`;
    read.at(-1)?.push(text);
    if (cell[3] === '\r\n') read.push([]);
  }
  if (read.pop()?.length !== 0) return 'its last row is not ended';
  if (read.length !== rows) return `${read.length} rows for ${rows}`;
  const width = read[0]?.length ?? 0;
  const odd = read.find(({ length }) => length !== width);
  return odd && `a row of ${odd.length} cells under ${width} headings`;
}
