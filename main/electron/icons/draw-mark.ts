type Colour = readonly [red: number, green: number, blue: number];

const INK: Colour = [0x1f, 0x2a, 0x30];
const PAPER: Colour = [0xf3, 0xee, 0xe2];
const GAUGE: Colour = [0xe6, 0x9f, 0x00];

/** Every pixel is asked at this many places across and down, so that edges are soft. */
const SAMPLES = 4;

/**
 * Our mark: a gauge bar laid across a lane. A dark plate, a pale lane that narrows towards the top with its dashes,
 * and the bar across it with its two end stops.
 * @returns four bytes per pixel, rows from the top
 */
export function drawMark(size: number): Uint8Array {
  const rgba = new Uint8Array(size * size * 4);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) rgba.set(pixel(x, y, size), (y * size + x) * 4);
  return rgba;
}

function pixel(x: number, y: number, size: number): number[] {
  const sum = [0, 0, 0];
  let covered = 0;
  for (let i = 0; i < SAMPLES; i++)
    for (let j = 0; j < SAMPLES; j++) {
      const colour = colourAt((x + (i + 0.5) / SAMPLES) / size, (y + (j + 0.5) / SAMPLES) / size);
      if (!colour) continue;
      covered++;
      colour.forEach((part, k) => {
        sum[k] = sum[k]! + part;
      });
    }
  if (covered === 0) return [0, 0, 0, 0];
  return [...sum.map((part) => Math.round(part / covered)), Math.round((255 * covered) / SAMPLES ** 2)];
}

/** The colour at a place of the unit square, u to the right, v down; undefined outside the plate. */
function colourAt(u: number, v: number): Colour | undefined {
  if (!inRoundedSquare(u, v, 0.04, 0.18)) return undefined;
  const fromMiddle = Math.abs(u - 0.5);
  // the gauge bar, and the stops hanging from its ends
  const onBar = v > 0.4 && v < 0.5 && fromMiddle < 0.38;
  const onStop = v > 0.4 && v < 0.64 && fromMiddle > 0.3 && fromMiddle < 0.38;
  if (onBar || onStop) return GAUGE;
  // the lane stands clear of the bar, as a road under a beam
  if (v > 0.36 && v < 0.54) return INK;
  const halfWidth = 0.1 + 0.16 * v;
  if (v < 0.12 || v > 0.9 || fromMiddle > halfWidth) return INK;
  const onDash = fromMiddle < 0.012 + 0.016 * v && (v * 100) % 17 < 10;
  return onDash ? INK : PAPER;
}

function inRoundedSquare(u: number, v: number, inset: number, radius: number): boolean {
  const reach = 0.5 - inset - radius;
  const du = Math.max(0, Math.abs(u - 0.5) - reach);
  const dv = Math.max(0, Math.abs(v - 0.5) - reach);
  return Math.hypot(du, dv) <= radius;
}
