import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import { LIMIT_NAME, sumText } from '../../../geo/load/weigh/say-plates.ts';
import { type PlateSum, plateSums } from '../../../geo/load/weigh/sums.ts';
import type { Layout } from './layout.ts';

const BAR_PX = 14;
const ROW_PX = 44;
const TOP_PX = 14;
const GAP_PX = 28;
const SIDE_PX = 28;
/** From the ground on, through the drawing's foot. */
const LEADER_PX = 30;
/** The bars end a little beyond what they hold. */
const ROOM = 1.04;

/**
 * What each axle carries against its plate under its wheel, and the whole below: three bars to one scale. The part
 * of the empty weight is filled darker; the whole is drawn as front and rear laid end to end.
 */
export function PlateBars({
  result,
  at,
}: {
  result: LoadFigures;
  at: Pick<Layout, 'widthPx' | 'x'> & { wheelbaseM: number };
}) {
  const { front, rear, gross } = plateSums(result);
  const wide = at.widthPx - 2 * SIDE_PX;
  const most = (sum: PlateSum) => Math.max(sum.plateKg, sum.loadKg, 1) * ROOM;
  const pxPerKg = Math.min((wide - GAP_PX) / (most(front) + most(rear)), wide / most(gross));
  const rearAt = SIDE_PX + most(front) * pxPerKg + GAP_PX;
  const { runningOrder: empty } = result;
  const bars = [
    { sum: front, left: SIDE_PX, top: TOP_PX, emptyKg: empty.frontKg, axleX: at.x(0) },
    { sum: rear, left: rearAt, top: TOP_PX, emptyKg: empty.rearKg, axleX: at.x(at.wheelbaseM) },
    { sum: gross, left: SIDE_PX, top: TOP_PX + ROW_PX, emptyKg: empty.grossKg },
  ];
  const high = TOP_PX + 2 * ROW_PX;
  return (
    <svg
      class="load-bars"
      viewBox={`0 0 ${at.widthPx} ${high}`}
      width={at.widthPx}
      height={high}
      aria-hidden="true"
    >
      {bars.map(({ axleX, ...bar }) => (
        <g key={bar.sum.limit}>
          {axleX !== undefined && <Leader from={axleX} bar={bar} pxPerKg={pxPerKg} />}
          <Bar {...bar} pxPerKg={pxPerKg} />
        </g>
      ))}
      <path
        class="load-bar-split"
        d={`M${SIDE_PX + Math.max(0, front.loadKg) * pxPerKg} ${TOP_PX + ROW_PX}v${BAR_PX}`}
      />
      <Legend
        right={at.widthPx - SIDE_PX}
        y={TOP_PX + ROW_PX + BAR_PX + 17}
        over={bars.some(({ sum }) => sum.over)}
      />
    </svg>
  );
}

interface BarProps {
  readonly sum: PlateSum;
  readonly left: number;
  readonly top: number;
  readonly emptyKg: number;
  readonly pxPerKg: number;
}

function Bar({ sum, left, top, emptyKg, pxPerKg }: BarProps) {
  const { plateKg, loadKg, over, limit } = sum;
  const px = (kg: number) => Math.max(0, kg) * pxPerKg;
  const [low, high] = [Math.min(plateKg, loadKg), Math.max(plateKg, loadKg)];
  return (
    <g class={over ? 'load-bar load-bar-over' : 'load-bar'}>
      <text x={left} y={top + BAR_PX + 17}>
        {LIMIT_NAME[limit]} <tspan class="load-bar-sum">{sumText(sum)}</tspan>
      </text>
      <rect class="load-bar-load" x={left} y={top} width={px(low)} height={BAR_PX} />
      <rect class="load-bar-empty" x={left} y={top} width={px(Math.min(emptyKg, low))} height={BAR_PX} />
      <rect
        class={over ? 'load-over' : 'load-spare'}
        x={left + px(low)}
        y={top}
        width={px(high) - px(low)}
        height={BAR_PX}
      />
      <path class="load-plate" d={`M${left + px(plateKg)} ${top - 4}v${BAR_PX + 8}`} />
    </g>
  );
}

/** What the shades of a bar mean, at the right of the lowest line. */
function Legend({ right, y, over }: { right: number; y: number; over: boolean }) {
  const words = [
    ['load-bar-empty', 'empty, ready to drive', 152],
    ['load-bar-load', 'aboard', 72],
    ['load-spare', 'spare', 62],
    ...(over ? [['load-over', 'over', 54] as const] : []),
  ] as const;
  let left = right - words.reduce((sum, [, , wide]) => sum + wide, 0);
  return words.map(([shade, word, wide]) => {
    const x = left;
    left += wide;
    return (
      <g key={word} class="load-legend">
        <rect class={shade} x={x} y={y - 9} width={10} height={10} />
        <text x={x + 15} y={y}>
          {word}
        </text>
      </g>
    );
  });
}

/** From the wheel down to its bar. */
function Leader({
  from,
  bar,
  pxPerKg,
}: {
  from: number;
  bar: Pick<BarProps, 'sum' | 'left' | 'top'>;
  pxPerKg: number;
}) {
  const right = bar.left + Math.max(bar.sum.plateKg, bar.sum.loadKg) * pxPerKg;
  const to = Math.min(right, Math.max(bar.left, from));
  return <path class="load-leader" d={`M${from} ${-LEADER_PX}V0L${to} 6V${bar.top}`} />;
}
