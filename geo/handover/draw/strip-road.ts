import { halfWidthAt, halfWidthPx, piecesByKind, visiblePieces } from '../../drive/strip/paper/road-drawn.ts';
import { crossingApart, stubsApart } from '../../drive/strip/paper/thin-out.ts';
import { type Markup, markup } from '../page/markup.ts';
import { MM_PER_PX, type StripColumn } from './lay-column.ts';
import type { OnPaper } from './projection.ts';
import { pathAlong } from './thin-line.ts';

interface Span {
  readonly fromM: number;
  readonly toM: number;
}

/** The ribbon with what lies beside it and crosses it. */
export function columnRoad(column: StripColumn): Markup {
  return markup`${beside(column)}${stubs(column)}${road(column)}${guessed(column)}${crossings(column)}${above(column)}`;
}

const NEAR_MM = 4.6;
const FAR_MM = 8.6;
const STEP_MM = 0.7;

/** One side of the ribbon over a span. @param asideMm to the right of its middle */
function side(column: StripColumn, { fromM, toM }: Span, asideMm: number): OnPaper[] {
  const places: number[] = [fromM];
  const step = Math.max(column.strip.leanStepM, STEP_MM / column.mmPerM);
  for (let m = Math.ceil((fromM + 1) / step) * step; m < toM; m += step) places.push(m);
  places.push(toM);
  return places.map((m) => ({ x: column.middle(m) + asideMm, y: column.y(m) }));
}

function shown<T extends Span>({ fromM, toM }: StripColumn, items: readonly T[]): T[] {
  return items
    .filter((item) => item.toM >= fromM && item.fromM <= toM)
    .map((item) => ({ ...item, fromM: Math.max(item.fromM, fromM), toM: Math.min(item.toM, toM) }));
}

function isIn({ fromM, toM }: Span, atM: number): boolean {
  return atM >= fromM && atM <= toM;
}

function band(column: StripColumn, span: Span, leftMm: number, rightMm: number): string {
  return `${pathAlong([...side(column, span, leftMm), ...side(column, span, rightMm).reverse()])}Z`;
}

function beside(column: StripColumn): Markup[] {
  return shown(column, column.strip.beside).map((each) => {
    const [left, right] = each.side === 'left' ? [-FAR_MM, -NEAR_MM] : [NEAR_MM, FAR_MM];
    return markup`<path class="strip-${each.kind}" d="${band(column, each, left, right)}"/>`;
  });
}

function halfMm(column: StripColumn, atM: number): number {
  return halfWidthAt(column.strip.pieces, atM) * MM_PER_PX;
}

const STUB_MM = 1.9;
const MAIN_STUB_MM = 2.7;

function stubs(column: StripColumn): Markup[] {
  return stubsApart(column.strip.stubs, column.mmPerM / MM_PER_PX)
    .filter(({ atM }) => isIn(column, atM))
    .map(({ atM, side: where, main }) => {
      const reach = halfMm(column, atM) + (main ? MAIN_STUB_MM : STUB_MM);
      const [x, y] = [column.middle(atM), column.y(atM)];
      const end = { x: where === 'left' ? x - reach : x + reach, y: y - 0.6 };
      return markup`<path class="${main ? 'strip-stub strip-stub-main' : 'strip-stub'}" d="${pathAlong([{ x, y }, end])}"/>`;
    });
}

const LEAST_MM = 0.8;

function road(column: StripColumn): Markup[] {
  const pieces = visiblePieces(shown(column, column.strip.pieces), LEAST_MM / column.mmPerM);
  return piecesByKind(pieces).map((group) => {
    const edge = (sign: number) =>
      group.flatMap((piece) => side(column, piece, sign * halfWidthPx(piece.widthM) * MM_PER_PX));
    const [left, right] = [edge(-1), edge(1)];
    return markup`<g class="strip-${group[0].kind}"><path class="strip-ground" d="${pathAlong([...left, ...right.toReversed()])}Z"/><path class="strip-edge" d="${pathAlong(left)}${pathAlong(right)}"/></g>`;
  });
}

function guessed(column: StripColumn): Markup[] {
  return shown(column, column.strip.guessed).map((span) => {
    const half = halfMm(column, span.fromM);
    return markup`<path class="strip-guessed" d="${band(column, span, -half, half)}"/>`;
  });
}

function crossings(column: StripColumn): Markup[] {
  const all = column.strip.crossings.map((atM) => ({ atM }));
  return crossingApart(all, column.mmPerM / MM_PER_PX)
    .filter(({ atM }) => isIn(column, atM))
    .map(({ atM }) => {
      const half = halfMm(column, atM) + 2.2;
      const x = (column.middle(atM) - half).toFixed(2);
      return markup`<path class="strip-crossing" d="M${x} ${(column.y(atM) - 0.4).toFixed(2)}h${(2 * half).toFixed(2)}m0 0.8h${(-2 * half).toFixed(2)}"/>`;
    });
}

function above(column: StripColumn): Markup[] {
  return crossingApart(column.strip.above, column.mmPerM / MM_PER_PX)
    .filter(({ atM }) => isIn(column, atM))
    .map(({ atM, rail, height }) => {
      const half = halfMm(column, atM) + 1.4;
      const [x, y, tall] = [column.middle(atM) - half, column.y(atM), rail ? 1.2 : 0.8];
      const figure =
        height === undefined
          ? undefined
          : markup`<text class="strip-height" x="${(x - 0.6).toFixed(2)}" y="${(y + 0.9).toFixed(2)}">${height.slice(0, 8)}</text>`;
      return markup`<rect class="strip-above" x="${x.toFixed(2)}" y="${(y - tall / 2).toFixed(2)}" width="${(2 * half).toFixed(2)}" height="${tall}"/>${figure}`;
    });
}
