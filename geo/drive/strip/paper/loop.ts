/** A place on the paper, pixels. */
interface OnPaper {
  readonly x: number;
  readonly y: number;
}

/** A way beside the ribbon as it lies on the paper, like a passing loop beside a railway. Pixels. */
export interface LoopPaper {
  /** the data of an SVG path, from where it leaves the ribbon to where it meets it */
  readonly path: string;
  /** its straight part runs here, from the top down to the bottom */
  readonly x: number;
  readonly topY: number;
  readonly bottomY: number;
  readonly middleY: number;
}

/** The straight part lies here: the figures of the distances give way to it. */
const LOOP_X = 30;
/** However short the stretch that it passes, so much of the loop is straight: its label and marks have room. */
const LEAST_STRAIGHT_PX = 56;
/** From the ribbon to the straight part it goes down the paper by so much. */
const SLANT_PX = 26;

/** Lays a way beside the ribbon. @param ends where it leaves the ribbon's left edge, and is on it again further down */
export function loopOf({ leaves, meets }: { readonly leaves: OnPaper; readonly meets: OnPaper }): LoopPaper {
  const middleY = (leaves.y + meets.y) / 2;
  const half = Math.max(LEAST_STRAIGHT_PX / 2, (meets.y - leaves.y) / 2 - SLANT_PX);
  const [topY, bottomY] = [middleY - half, middleY + half];
  const px = (value: number) => value.toFixed(1);
  const out = leaves.x - SLANT_PX / 2;
  const back = meets.x - SLANT_PX / 2;
  // a short stretch: the loop reaches above and below it
  const up = Math.min(topY - SLANT_PX / 2, leaves.y);
  const down = Math.max(bottomY + SLANT_PX / 2, meets.y);
  return {
    path:
      `M${px(leaves.x)} ${px(leaves.y)}` +
      `C${px(out)} ${px(leaves.y)} ${LOOP_X} ${px(up)} ${LOOP_X} ${px(topY)}` +
      `V${px(bottomY)}` +
      `C${LOOP_X} ${px(down)} ${px(back)} ${px(meets.y)} ${px(meets.x)} ${px(meets.y)}`,
    x: LOOP_X,
    topY,
    bottomY,
    middleY,
  };
}

/** Half of what the label at the middle takes, and half a mark. */
const LABEL_HALF_PX = 32;
/** Marks stand no nearer to each other. */
const APART_PX = 19;

/**
 * Where marks stand on the straight part; those without room are left out.
 * @param shares how far along the way each belongs, 0…1, the gravest first
 */
export function loopMarks(
  { topY, bottomY, middleY }: LoopPaper,
  shares: readonly number[],
): { readonly index: number; readonly y: number }[] {
  const placed: { index: number; y: number }[] = [];
  for (const [index, share] of shares.entries()) {
    const wanted = topY + Math.max(0, Math.min(1, share)) * (bottomY - topY);
    const y = Math.abs(wanted - middleY) >= LABEL_HALF_PX ? wanted : besideLabel(wanted, middleY);
    if (placed.every((other) => Math.abs(other.y - y) >= APART_PX)) placed.push({ index, y });
  }
  return placed;
}

function besideLabel(y: number, middleY: number): number {
  return y < middleY ? middleY - LABEL_HALF_PX : middleY + LABEL_HALF_PX;
}
