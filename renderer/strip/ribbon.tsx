import {
  halfWidthAt,
  halfWidthPx,
  piecesByKind,
  visiblePieces,
} from '../../geo/drive/strip/paper/road-drawn.ts';
import { crossingApart, stubsApart } from '../../geo/drive/strip/paper/thin-out.ts';
import type { Side } from '../../geo/drive/strip/strip.ts';
import {
  type Aside,
  band,
  cutTo,
  drawnOf,
  isDrawn,
  middleOf,
  type StripDrawing,
  sideLine,
} from './drawing.ts';

/** The road itself with what lies beside and above it. */
export function Ribbon({ drawing }: { drawing: StripDrawing }) {
  return (
    <g>
      <Beside drawing={drawing} />
      <SideRoads drawing={drawing} />
      <Road drawing={drawing} />
      <Guessed drawing={drawing} />
      <Crossings drawing={drawing} />
      <Above drawing={drawing} />
    </g>
  );
}

interface Props {
  readonly drawing: StripDrawing;
}

const NEAR_PX = 23;
const FAR_PX = 45;
const BESIDE: Readonly<Record<Side, Aside>> = {
  left: { left: NEAR_PX, right: FAR_PX },
  right: { left: -FAR_PX, right: -NEAR_PX },
};

/** Water, woods and buildings. */
function Beside({ drawing }: Props) {
  return (
    <>
      {drawnOf(drawing, drawing.strip.beside).map((each) => (
        <path
          key={`${each.side}-${each.fromM}`}
          class={`strip-${each.kind}`}
          d={band(drawing, cutTo(drawing, each), BESIDE[each.side])}
        />
      ))}
    </>
  );
}

/** How far a side road reaches beyond the driven one's edge. */
const STUB_PX = 9;
const MAIN_STUB_PX = 13;

function SideRoads({ drawing }: Props) {
  const { strip, scale } = drawing;
  return (
    <>
      {stubsApart(strip.stubs, scale.pxPerM)
        .filter(({ atM }) => isDrawn(drawing, atM))
        .map(({ atM, side, main }, i) => {
          const x = middleOf(drawing, atM);
          const reach = halfWidthAt(strip.pieces, atM) + (main ? MAIN_STUB_PX : STUB_PX);
          return (
            <line
              key={`${atM}-${i}`}
              class={main ? 'strip-stub strip-stub-main' : 'strip-stub'}
              x1={x}
              y1={scale.y(atM)}
              x2={side === 'left' ? x + reach : x - reach}
              y2={scale.y(atM) + 3}
            />
          );
        })}
    </>
  );
}

/** Pieces shorter than this on the paper are drawn with their neighbours. */
const LEAST_PX = 4;

function Road({ drawing }: Props) {
  const shown = visiblePieces(drawnOf(drawing, drawing.strip.pieces), LEAST_PX / drawing.scale.pxPerM);
  return (
    <>
      {piecesByKind(shown).map((pieces) => {
        const edge = (sign: number) =>
          pieces.flatMap((piece) =>
            sideLine(drawing, cutTo(drawing, piece), sign * halfWidthPx(piece.widthM)),
          );
        const left = edge(-1);
        const right = edge(1);
        return (
          <g key={pieces[0].fromM} class={`strip-road strip-${pieces[0].kind}`}>
            <path class="strip-ground" d={`M${[...left, ...right.toReversed()].join('L')}Z`} />
            <path class="strip-edge" d={`M${left.join('L')}M${right.join('L')}`} />
          </g>
        );
      })}
    </>
  );
}

function Guessed({ drawing }: Props) {
  return (
    <>
      {drawnOf(drawing, drawing.strip.guessed).map((span) => {
        const half = halfWidthAt(drawing.strip.pieces, span.fromM);
        return (
          <path
            key={span.fromM}
            class="strip-guessed"
            d={band(drawing, cutTo(drawing, span), { left: -half, right: half })}
          />
        );
      })}
    </>
  );
}

/** Level crossings. */
function Crossings({ drawing }: Props) {
  const { strip, scale } = drawing;
  const crossings = strip.crossings.map((atM) => ({ atM }));
  return (
    <>
      {crossingApart(crossings, scale.pxPerM)
        .filter(({ atM }) => isDrawn(drawing, atM))
        .map(({ atM }) => {
          const half = halfWidthAt(strip.pieces, atM) + 12;
          return (
            <path
              key={atM}
              class="strip-crossing"
              d={`M${middleOf(drawing, atM) - half} ${scale.y(atM) - 2}h${2 * half}m0 4h${-2 * half}`}
            />
          );
        })}
    </>
  );
}

/** A bridge stands out over the road's edge by this much. */
const BAR_PX = 7;

/** Bridges over the road, with the height where one is mapped. */
function Above({ drawing }: Props) {
  const { strip, scale } = drawing;
  return (
    <>
      {crossingApart(strip.above, scale.pxPerM)
        .filter(({ atM }) => isDrawn(drawing, atM))
        .map(({ atM, rail, height }, i) => {
          const half = halfWidthAt(strip.pieces, atM) + BAR_PX;
          const left = middleOf(drawing, atM) - half;
          return (
            <g key={`${atM}-${i}`} class="strip-above">
              <rect x={left} y={scale.y(atM) - (rail ? 3 : 2)} width={2 * half} height={rail ? 6 : 4} />
              {height !== undefined && (
                <text x={left - 4} y={scale.y(atM) + 5} text-anchor="end">
                  {height.slice(0, 8)}
                </text>
              )}
            </g>
          );
        })}
    </>
  );
}
