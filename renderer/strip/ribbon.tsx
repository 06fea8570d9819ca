import type { Strip } from '../../geo/drive/strip/strip.ts';
import { halfWidthPx, middleAt, pieceAt, type StripScale, visiblePieces } from './scale.ts';

interface Props {
  readonly strip: Strip;
  readonly scale: StripScale;
  readonly fromM: number;
  readonly toM: number;
}

/** The road itself with what lies beside and above it, between two distances. */
export function Ribbon({ strip, scale, fromM, toM }: Props) {
  const middle = (atM: number) => middleAt(strip.lean, strip.leanStepM, atM);
  const shown = <T extends { readonly fromM: number; readonly toM: number }>(items: readonly T[]) =>
    items.filter((item) => item.toM >= fromM && item.fromM <= toM);
  const inView = ({ atM }: { readonly atM: number }) => atM >= fromM && atM <= toM;
  const edge = (atM: number) => halfWidthPx(pieceAt(strip.pieces, atM)?.widthM ?? 5);
  const least = LEAST_PX / scale.pxPerM;
  return (
    <g>
      {shown(strip.beside).map((run) => (
        <path
          key={`${run.side}-${run.fromM}`}
          class={`strip-${run.kind}`}
          d={band(scale, middle, strip.leanStepM, clip(run, fromM, toM), ...asideOf(run.side))}
        />
      ))}
      {thinned(strip.stubs, scale)
        .filter(inView)
        .map(({ atM, side, main }, i) => {
          const sign = side === 'left' ? -1 : 1;
          const x = middle(atM);
          return (
            <line
              key={`${atM}-${i}`}
              class={main ? 'strip-stub strip-stub-main' : 'strip-stub'}
              x1={x}
              y1={scale.y(atM)}
              x2={x + sign * (edge(atM) + (main ? 13 : 9))}
              y2={scale.y(atM) - 3}
            />
          );
        })}
      {runsOf(visiblePieces(shown(strip.pieces), least)).map((run) => {
        const [left, right] = [-1, 1].map((sign) =>
          run.flatMap((piece) =>
            side(scale, middle, strip.leanStepM, clip(piece, fromM, toM), sign * halfWidthPx(piece.widthM)),
          ),
        ) as [string[], string[]];
        return (
          <g key={run[0].fromM} class={`strip-road strip-${run[0].kind}`}>
            <path class="strip-ground" d={`M${[...left, ...right.toReversed()].join('L')}Z`} />
            <path class="strip-edge" d={`M${left.join('L')}M${right.join('L')}`} />
          </g>
        );
      })}
      {shown(strip.guessed).map((run) => (
        <path
          key={run.fromM}
          class="strip-guessed"
          d={band(scale, middle, strip.leanStepM, clip(run, fromM, toM), -edge(run.fromM), edge(run.fromM))}
        />
      ))}
      {apart(
        strip.crossings.map((atM) => ({ atM })),
        scale,
      )
        .filter(inView)
        .map(({ atM }) => (
          <path
            key={atM}
            class="strip-crossing"
            d={`M${middle(atM) - edge(atM) - 12} ${scale.y(atM) - 2}h${2 * edge(atM) + 24}m0 4h${-2 * edge(atM) - 24}`}
          />
        ))}
      {apart(strip.above, scale)
        .filter(inView)
        .map(({ atM, rail, height }, i) => (
          <g key={`${atM}-${i}`} class="strip-above">
            <rect
              x={middle(atM) - edge(atM) - BAR_PX}
              y={scale.y(atM) - (rail ? 3 : 2)}
              width={2 * (edge(atM) + BAR_PX)}
              height={rail ? 6 : 4}
            />
            {height !== undefined && (
              <text x={middle(atM) - edge(atM) - BAR_PX - 4} y={scale.y(atM) + 5} text-anchor="end">
                {height.slice(0, 8)}
              </text>
            )}
          </g>
        ))}
    </g>
  );
}

/** Where side roads stand closer than ink can, a main one is drawn before others. */
function thinned(stubs: Strip['stubs'], scale: StripScale): Strip['stubs'] {
  const last = { left: Number.NEGATIVE_INFINITY, right: Number.NEGATIVE_INFINITY };
  const lastMain = { ...last };
  return stubs.filter(({ atM, side, main }) => {
    if ((atM - lastMain[side]) * scale.pxPerM < STUB_APART_PX) return false;
    if (!main && (atM - last[side]) * scale.pxPerM < STUB_APART_PX) return false;
    last[side] = atM;
    if (main) lastMain[side] = atM;
    return true;
  });
}

/** What crosses the road, the first of those that stand too close; a bridge with its height always. */
function apart<T extends { readonly atM: number; readonly height?: string | undefined }>(
  items: readonly T[],
  scale: StripScale,
): T[] {
  let lastM = Number.NEGATIVE_INFINITY;
  return items.filter(({ atM, height }) => {
    if (height === undefined && (atM - lastM) * scale.pxPerM < ACROSS_APART_PX) return false;
    lastM = atM;
    return true;
  });
}

const STUB_APART_PX = 5;
const ACROSS_APART_PX = 9;
/** A bridge stands out over the road's edge by this much. */
const BAR_PX = 7;
const ASIDE_NEAR_PX = 23;
const ASIDE_FAR_PX = 45;
/** Pieces shorter than this on the paper are drawn with their neighbours. */
const LEAST_PX = 4;

function asideOf(side: 'left' | 'right'): [number, number] {
  return side === 'left' ? [-ASIDE_FAR_PX, -ASIDE_NEAR_PX] : [ASIDE_NEAR_PX, ASIDE_FAR_PX];
}

function clip(span: { readonly fromM: number; readonly toM: number }, fromM: number, toM: number) {
  return { fromM: Math.max(span.fromM, fromM), toM: Math.min(span.toM, toM) };
}

type Middle = (atM: number) => number;
interface Between {
  readonly fromM: number;
  readonly toM: number;
}

/** A closed outline that follows the ribbon's lean between two distances and two offsets from its middle. */
export function band(
  scale: StripScale,
  middle: Middle,
  stepM: number,
  span: Between,
  left: number,
  right: number,
): string {
  const up = side(scale, middle, stepM, span, left);
  const down = side(scale, middle, stepM, span, right).reverse();
  return `M${[...up, ...down].join('L')}Z`;
}

/** Consecutive pieces of one kind: their edges are drawn as one line, stepped where the width changes. */
function runsOf(pieces: readonly StripPiece[]): [StripPiece, ...StripPiece[]][] {
  const runs: [StripPiece, ...StripPiece[]][] = [];
  for (const piece of pieces) {
    const run = runs.at(-1);
    if (run?.[0].kind === piece.kind) run.push(piece);
    else runs.push([piece]);
  }
  return runs;
}

type StripPiece = Strip['pieces'][number];

function side(
  scale: StripScale,
  middle: Middle,
  stepM: number,
  { fromM, toM }: Between,
  aside: number,
): string[] {
  const places: number[] = [fromM];
  // no finer than the eye: at a small scale every vertex would be drawn within one pixel
  const step = Math.max(stepM, 3 / scale.pxPerM);
  for (let m = Math.ceil((fromM + 1) / step) * step; m < toM; m += step) places.push(m);
  places.push(toM);
  return places.map((m) => `${(middle(m) + aside).toFixed(1)} ${scale.y(m).toFixed(1)}`);
}
