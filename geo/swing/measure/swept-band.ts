/** The ground swept, told by the path: in cells a step long the farthest left and right of it. Metres. */
export interface SweptBand {
  /** an edge or a point of the body covers the way from one place beside the path to another */
  cover(fromM: number, fromLeftM: number, toM: number, toLeftM: number): void;
  /** the widest cell: never less than the widest place, and more by no more than a cell's own slope */
  widestM(): number;
}

const CELL_M = 0.002;
const CELLS_MAX = 2_000_000;

/**
 * Cells lie at whole multiples of their length, so that the same ground falls into the same cells whatever else is
 * covered; each holds the farthest that it meets anywhere, so that no corner between two of them is missed.
 * @param fromM and toM the stretch of the path that the vehicle can reach
 */
export function sweptBand(fromM: number, toM: number): SweptBand {
  const cellM = Math.max(CELL_M, (toM - fromM) / CELLS_MAX);
  const first = Math.floor(fromM / cellM);
  const count = Math.floor(toM / cellM) - first + 1;
  const left = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const right = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  return {
    cover(aM, aLeftM, bM, bLeftM) {
      const [lowM, highM] = aM < bM ? [aM, bM] : [bM, aM];
      const slope = aM === bM ? 0 : (bLeftM - aLeftM) / (bM - aM);
      const from = Math.max(first, Math.floor(lowM / cellM));
      const to = Math.min(first + count - 1, Math.floor(highM / cellM));
      for (let cell = from; cell <= to; cell++) {
        const startLeftM = from === to ? aLeftM : aLeftM + slope * (Math.max(lowM, cell * cellM) - aM);
        const endLeftM = from === to ? bLeftM : aLeftM + slope * (Math.min(highM, (cell + 1) * cellM) - aM);
        const index = cell - first;
        left[index] = Math.max(left[index]!, startLeftM, endLeftM);
        right[index] = Math.min(right[index]!, startLeftM, endLeftM);
      }
    },
    widestM() {
      let widestM = 0;
      for (let cell = 0; cell < count; cell++) widestM = Math.max(widestM, left[cell]! - right[cell]!);
      return widestM;
    },
  };
}
