/** How a row lies. */
interface Lay {
  /** a list of drives, each with its vehicles' marks, in place of a table */
  readonly narrow: boolean;
  readonly rowPx: number;
}

const NARROW_PX = 640;
const ROW_PX = 52;
/** In a list: the drive's own lines, a line of marks, the room of one mark. */
const [HEAD_PX, LINE_PX, MARK_PX, MARK_GAP_PX, EDGE_PX] = [62, 58, 160, 6, 24];

/** How rows lie in a grid of this width: the same height for all, so that where each lies is known undrawn. */
export function layOf(widthPx: number, vehicles: number): Lay {
  if (widthPx >= NARROW_PX) return { narrow: false, rowPx: ROW_PX };
  const abreast = Math.max(1, Math.floor((widthPx - EDGE_PX + MARK_GAP_PX) / (MARK_PX + MARK_GAP_PX)));
  return { narrow: true, rowPx: HEAD_PX + Math.ceil(vehicles / abreast) * LINE_PX + 10 };
}
