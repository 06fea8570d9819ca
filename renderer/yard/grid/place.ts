import { signal } from '@preact/signals';

/** A place of the grid: row −1 holds the vehicles' heads, column 0 the drives'. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** Where the grid was left: the one place that Tab goes to. */
export const gridPlace = signal<Place>({ row: 0, column: 0 });

/** How large a grid is. */
export interface Extent {
  readonly rows: number;
  readonly columns: number;
  /** rows in sight, for the page keys */
  readonly page: number;
}

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

/** Where a key leads from a place; undefined where it is none of the grid's. */
export function placeAfter(
  { key, ctrlKey, altKey, metaKey }: Pressed,
  { row, column }: Place,
  { rows, columns, page }: Extent,
): Place | undefined {
  if (altKey || metaKey) return undefined;
  const to = (r: number, c: number): Place => ({
    row: Math.max(-1, Math.min(rows - 1, r)),
    column: Math.max(0, Math.min(columns, c)),
  });
  switch (key) {
    case 'ArrowUp':
      return to(row - 1, column);
    case 'ArrowDown':
      return to(row + 1, column);
    case 'ArrowLeft':
      return to(row, column - 1);
    case 'ArrowRight':
      return to(row, column + 1);
    case 'PageUp':
      return to(Math.max(0, row - page), column);
    case 'PageDown':
      return to(row + page, column);
    case 'Home':
      return ctrlKey ? to(0, 0) : to(row, 0);
    case 'End':
      return ctrlKey ? to(rows - 1, columns) : to(row, columns);
    default:
      return undefined;
  }
}

/** Which rows are drawn: those in sight and a few on either side, so that a scroll finds them there. */
export function rowsInSight(
  { topPx, heightPx, rowPx }: { readonly topPx: number; readonly heightPx: number; readonly rowPx: number },
  rows: number,
): { readonly from: number; readonly to: number } {
  const [first, count] = [Math.floor(topPx / rowPx), Math.ceil(heightPx / rowPx)];
  const from = Math.max(0, Math.min(rows, first) - BESIDE);
  return { from, to: Math.min(rows, first + count + BESIDE) };
}
const BESIDE = 4;

/** Which columns are drawn, 0-based among the vehicles: those in sight and a few on either side; all where they have room. */
export function columnsInSight(
  { leftPx, widthPx }: { readonly leftPx: number; readonly widthPx: number },
  { headPx, cellPx }: { readonly headPx: number; readonly cellPx: number },
  columns: number,
): { readonly from: number; readonly to: number } {
  const roomPx = widthPx - headPx;
  if (roomPx >= columns * cellPx) return { from: 0, to: columns };
  const first = Math.floor(leftPx / cellPx);
  return { from: Math.max(0, first - 2), to: Math.min(columns, first + Math.ceil(roomPx / cellPx) + 3) };
}
