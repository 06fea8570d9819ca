import type { Motion } from './motion.ts';

export interface Recorder {
  add(travelM: number, xM: number, yM: number, headingRad: number, steerRad: number): void;
  close(): Motion;
}

/** Collects the samples of a motion. */
export function recordMotion(): Recorder {
  const rows: [number[], number[], number[], number[], number[]] = [[], [], [], [], []];
  return {
    add(...sample) {
      for (let field = 0; field < 5; field++) (rows[field] as number[]).push(sample[field]!);
    },
    close() {
      const [travelM, xM, yM, headingRad, steerRad] = rows.map((row) => Float64Array.from(row)) as [
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
      ];
      return { travelM, xM, yM, headingRad, steerRad };
    },
  };
}
