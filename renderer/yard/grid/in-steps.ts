import { useLayoutEffect, useRef } from 'preact/hooks';

/** So many cells are drawn anew at a time: a frame's work on a slow computer. */
const CELLS_A_FRAME = 40;

/** Which vehicles of a row are drawn. */
interface Columns {
  readonly from: number;
  readonly to: number;
}

interface Before {
  readonly drawn: ReadonlyMap<string, Columns>;
  readonly frame: number;
  /** of that frame's share */
  readonly left: number;
}

/**
 * What of the rows in sight is drawn now: as before what was drawn before, and of a few rows each frame what is to be
 * drawn, so that a jump or another order never holds the page for as long as a whole sheet of new cells takes.
 * @param frame counts the frames: what is drawn several times within one has one frame's share
 * @param nextFrame has the grid drawn again in the next frame, where rows are left to draw
 * @returns by row the vehicles that are drawn; a row whose turn has not come is missing, or has those it had
 */
export function useInSteps(
  rows: readonly { readonly id: string }[],
  columns: Columns,
  { frame, nextFrame }: { readonly frame: number; readonly nextFrame: () => void },
): ReadonlyMap<string, Columns> {
  const before = useRef<Before>({ drawn: new Map(), frame, left: CELLS_A_FRAME });
  const drawn = new Map<string, Columns>();
  let left = frame === before.current.frame ? before.current.left : CELLS_A_FRAME;
  let isAll = true;
  for (const { id } of rows) {
    const had = before.current.drawn.get(id);
    const anew = newIn(columns, had);
    // one row at least comes on
    if (anew === 0 || left === CELLS_A_FRAME || anew <= left) {
      drawn.set(id, columns);
      left -= anew;
      continue;
    }
    isAll = false;
    if (had) drawn.set(id, had);
  }
  useLayoutEffect(() => {
    before.current = { drawn, frame, left };
    if (!isAll) nextFrame();
  });
  return drawn;
}

/** How many cells a row has to be drawn anew; its drive's own counts as one. */
function newIn({ from, to }: Columns, had: Columns | undefined): number {
  if (had === undefined) return to - from + 1;
  const common = Math.max(0, Math.min(to, had.to) - Math.max(from, had.from));
  return to - from - common;
}
