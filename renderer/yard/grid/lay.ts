/** How drives and vehicles lie in the grid, CSS pixels: worked out, so that where each lies is known undrawn. */
export interface Lay {
  /** a list of drives, each with its vehicles' marks, in place of a table */
  readonly narrow: boolean;
  /** the same for all rows */
  readonly rowPx: number;
  /** the drives' own column */
  readonly headPx: number;
  /** each vehicle's column */
  readonly cellPx: number;
}

const NARROW_PX = 640;
const ROW_PX = 52;
/** The narrowest column, where not all fit, and the widest. */
const [CELL_PX, WIDE_CELL_PX] = [88, 120];
/** The drives' column: its share of the window within the first two, and up to the last where room is left. */
const [HEAD_PX, FULL_HEAD_PX, WIDE_HEAD_PX, HEAD_SHARE] = [210, 320, 440, 0.24];
/** In a list: the drive's own lines, a line of marks, the room of one mark. */
const [LINES_PX, LINE_PX, MARK_PX, MARK_GAP_PX, EDGE_PX] = [62, 58, 160, 6, 24];

/** @param widthPx of the grid @param windowPx of the window, which what stands beside the grid leaves as it is */
export function layOf(widthPx: number, windowPx: number, vehicles: number): Lay {
  if (widthPx < NARROW_PX) {
    const abreast = Math.max(1, Math.floor((widthPx - EDGE_PX + MARK_GAP_PX) / (MARK_PX + MARK_GAP_PX)));
    const rowPx = LINES_PX + Math.ceil(vehicles / abreast) * LINE_PX + 10;
    return { narrow: true, rowPx, headPx: 0, cellPx: 0 };
  }
  const leastPx = within(HEAD_PX, Math.round(windowPx * HEAD_SHARE), FULL_HEAD_PX);
  const cellPx = within(CELL_PX, Math.floor((widthPx - leastPx) / Math.max(1, vehicles)), WIDE_CELL_PX);
  return {
    narrow: false,
    rowPx: ROW_PX,
    headPx: within(leastPx, widthPx - vehicles * cellPx, WIDE_HEAD_PX),
    cellPx,
  };
}

function within(least: number, value: number, most: number): number {
  return Math.max(least, Math.min(value, most));
}
