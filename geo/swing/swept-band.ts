/** The ground swept, told by the path: at stations a step apart the farthest left and right of it. Metres. */
export interface SweptBand {
  /** a point of the body ran from one place beside the path to another */
  run(fromM: number, fromLeftM: number, toM: number, toLeftM: number): void;
  widestM(): number;
}

const STEP_M = 0.05;
const STATIONS_MAX = 400_000;

/** @param fromM and toM the stretch of the path that the vehicle can reach */
export function sweptBand(fromM: number, toM: number): SweptBand {
  const stepM = Math.max(STEP_M, (toM - fromM) / STATIONS_MAX);
  const count = Math.ceil((toM - fromM) / stepM) + 1;
  const left = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const right = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  return {
    run(aM, aLeftM, bM, bLeftM) {
      const first = Math.max(0, Math.ceil((Math.min(aM, bM) - fromM) / stepM));
      const last = Math.min(count - 1, Math.floor((Math.max(aM, bM) - fromM) / stepM));
      const slope = aM === bM ? 0 : (bLeftM - aLeftM) / (bM - aM);
      for (let station = first; station <= last; station++) {
        const leftM = aLeftM + slope * (fromM + station * stepM - aM);
        if (leftM > left[station]!) left[station] = leftM;
        if (leftM < right[station]!) right[station] = leftM;
      }
    },
    widestM() {
      let widestM = 0;
      for (let station = 0; station < count; station++)
        widestM = Math.max(widestM, left[station]! - right[station]!);
      return widestM;
    },
  };
}
