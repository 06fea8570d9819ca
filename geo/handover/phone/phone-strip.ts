import { middleAt, smoothed } from '../../drive/strip/paper/lean-drawn.ts';
import { halfWidthAt, halfWidthPx } from '../../drive/strip/paper/road-drawn.ts';
import { stubsApart } from '../../drive/strip/paper/thin-out.ts';
import type { Strip } from '../../drive/strip/strip.ts';
import { pathAlong } from '../draw/thin-line.ts';
import { type Markup, markup } from '../page/markup.ts';

/** The ribbon is this wide on the page, and as high as what is said beside it. Pixels. */
export const RIBBON_PX = 64;
const MIDDLE_PX = 32;
/** Where the window's paper has the ribbon's middle. */
const WINDOW_MIDDLE_PX = 92;
const HIGH = 100;
const STEPS = 24;

/** The strip with bends calmed to what a phone's scale shows. */
export function calmStrip(strip: Strip): Strip {
  const overM = Math.max(200, strip.lengthM / 60);
  return { ...strip, lean: smoothed(strip.lean, overM / strip.leanStepM) };
}

/**
 * A piece of the ribbon, read from the top down as the page is, stretched to the height of its row. A piece without
 * length is the road at one place.
 */
export function ribbonPiece(strip: Strip, fromM: number, toM: number): Markup {
  const y = (m: number) => (toM > fromM ? (HIGH * (m - fromM)) / (toM - fromM) : 0);
  const x = (m: number) => MIDDLE_PX + (middleAt(strip.lean, strip.leanStepM, m) - WINDOW_MIDDLE_PX) * 0.7;
  const at = Array.from({ length: toM > fromM ? STEPS + 1 : 2 }, (_, i) =>
    toM > fromM ? fromM + ((toM - fromM) * i) / STEPS : fromM,
  );
  const edge = (sign: number) =>
    at.map((m, i) => ({
      x: x(m) + sign * Math.min(9, halfAt(strip, m)),
      y: toM > fromM ? y(m) : i * HIGH,
    }));
  const [left, right] = [edge(-1), edge(1)];
  const stubs =
    toM > fromM
      ? stubsApart(strip.stubs, HIGH / (toM - fromM))
          .filter(({ atM }) => atM > fromM && atM < toM)
          .map(({ atM, side, main }) => {
            const reach = (main ? 16 : 13) * (side === 'left' ? 1 : -1);
            return markup`<path class="${main ? 'stub main' : 'stub'}" d="${pathAlong([
              { x: x(atM), y: y(atM) },
              { x: x(atM) + reach, y: y(atM) + 1 },
            ])}"/>`;
          })
      : [];
  const above =
    toM > fromM
      ? strip.above
          .filter(({ atM }) => atM >= fromM && atM < toM)
          .slice(0, 12)
          .map(
            ({ atM }) =>
              markup`<path class="over" d="M${(x(atM) - 13).toFixed(1)} ${y(atM).toFixed(1)}h26"/>`,
          )
      : [];
  return markup`<svg class="ribbon" viewBox="0 0 ${RIBBON_PX} ${HIGH}" preserveAspectRatio="none" aria-hidden="true">${stubs}<path class="ground" d="${pathAlong([...left, ...right.toReversed()])}Z"/><path class="edge" d="${pathAlong(left)}${pathAlong(right)}"/>${above}</svg>`;
}

function halfAt(strip: Strip, atM: number): number {
  return strip.pieces.length === 0 ? halfWidthPx(5) : halfWidthAt(strip.pieces, atM);
}
