/** Where things stand on the ribbon: it is read from the bottom (the start) to the top. Pixels from the top. */
export interface StripScale {
  readonly lengthM: number;
  readonly pxPerM: number;
  readonly heightPx: number;
  y(atM: number): number;
  atM(y: number): number;
}

export const PAD_PX = 34;
/** Across the ribbon one scale holds for road and vehicle alike. */
export const ACROSS_PX_PER_M = 2.4;
export const MIDDLE_PX = 96;
export const WIDTH_PX = 200;
const LEAN_PX = 22;

export function stripScale(lengthM: number, pxPerM: number): StripScale {
  const heightPx = lengthM * pxPerM + 2 * PAD_PX;
  return {
    lengthM,
    pxPerM,
    heightPx,
    y: (atM) => heightPx - PAD_PX - atM * pxPerM,
    atM: (y) => Math.max(0, Math.min(lengthM, (heightPx - PAD_PX - y) / pxPerM)),
  };
}

/** The ribbon's middle at a place, pixels from the left: it leans the way the road bends. */
export function middleAt(lean: readonly number[], stepM: number, atM: number): number {
  const at = atM / stepM;
  const i = Math.min(lean.length - 1, Math.max(0, Math.floor(at)));
  const a = lean[i] ?? 0;
  const b = lean[i + 1] ?? a;
  return MIDDLE_PX + LEAN_PX * (a + (b - a) * Math.min(1, Math.max(0, at - i)));
}

/** Half the road's width on the paper: never a hair, never the whole ribbon. */
export function halfWidthPx(widthM: number): number {
  return Math.max(2.5, Math.min(17, (widthM * ACROSS_PX_PER_M) / 2));
}

const STEPS_M = [100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];

/** The distance between two figures so that they stand at least so far apart. @param unitM 1 for kilometres, 1.609344 for miles */
export function tickStepM(pxPerM: number, unitM: number): number {
  const least = 56 / pxPerM;
  return unitM * (STEPS_M.find((step) => step * unitM >= least) ?? 100_000);
}

/** Lifts marks off one another: lowest first, none nearer to the one below than `apartPx`. */
export function spreadUp(ys: readonly number[], apartPx: number): number[] {
  const order = ys.map((_, i) => i).sort((a, b) => (ys[b] as number) - (ys[a] as number));
  const placed = [...ys];
  let above = Number.POSITIVE_INFINITY;
  for (const i of order) {
    const y = Math.min(placed[i] as number, above - apartPx);
    placed[i] = y;
    above = y;
  }
  return placed;
}
