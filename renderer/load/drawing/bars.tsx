import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import { type LoadLevel, levelOf } from '../../../geo/load/weigh/load-level.ts';
import { LIMIT_NAME, sumText } from '../../../geo/load/weigh/say-plates.ts';
import { type PlateSum, plateSums } from '../../../geo/load/weigh/sums.ts';
import { settings } from '../../state/kept.ts';
import type { Layout } from './layout.ts';

const SPARE_SHADE: Readonly<Record<LoadLevel, string>> = {
  over: 'load-over',
  tight: 'load-spare load-spare-tight',
  within: 'load-spare',
};

const BAR_PX = 14;
const ROW_PX = 44;
const TOP_PX = 14;
const GAP_PX = 28;
const SIDE_PX = 28;
/** A line for what the shades mean, where it does not stand beside the lowest figures. */
const LEGEND_PX = 20;
/** From the ground on, through the drawing's foot. */
const LEADER_PX = 30;
/** The bars end a little beyond what they hold. */
const ROOM = 1.04;

/** Narrower than this the axles' bars and their figures do not stand side by side. */
const NARROW_PX = 560;

interface Props {
  readonly result: LoadFigures;
  readonly at: Pick<Layout, 'widthPx' | 'x'> & { readonly wheelbaseM: number };
}

/**
 * What each axle carries against its plate under its wheel, and the whole below: three bars to one scale. The part
 * of the empty weight is filled darker; the whole is drawn as front and rear laid end to end.
 */
export function PlateBars({ result, at }: Props) {
  const { bars, pxPerKg, high } = layBars(result, at);
  const [whole] = bars.filter(({ sum }) => sum.limit === 'gross');
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
      {whole && (
        <path
          class="load-bar-split"
          d={`M${whole.left + Math.max(0, result.frontKg) * pxPerKg} ${whole.top}v${BAR_PX}`}
        />
      )}
      <Legend right={at.widthPx - SIDE_PX} y={high - 13} over={bars.some(({ sum }) => sum.over)} />
    </svg>
  );
}

interface LaidBar extends Omit<BarProps, 'pxPerKg'> {
  /** where its wheel stands above it */
  readonly axleX?: number;
}

interface Laid {
  readonly bars: readonly LaidBar[];
  readonly pxPerKg: number;
  readonly high: number;
}

/** The axles side by side with the whole below; on narrow paper all three below one another. */
function layBars(result: LoadFigures, { widthPx, x, wheelbaseM }: Props['at']): Laid {
  const { front, rear, gross } = plateSums(result);
  const { runningOrder: empty } = result;
  const wide = widthPx - 2 * SIDE_PX;
  const most = (sum: PlateSum) => Math.max(sum.plateKg, sum.loadKg, 1) * ROOM;
  const row = (number: number) => TOP_PX + number * ROW_PX;
  const start = { left: SIDE_PX };
  if (widthPx < NARROW_PX)
    return {
      pxPerKg: wide / most(gross),
      high: row(3) + LEGEND_PX,
      bars: [
        { ...start, sum: front, top: row(0), emptyKg: empty.frontKg },
        { ...start, sum: rear, top: row(1), emptyKg: empty.rearKg },
        { ...start, sum: gross, top: row(2), emptyKg: empty.grossKg },
      ],
    };
  const pxPerKg = Math.min((wide - GAP_PX) / (most(front) + most(rear)), wide / most(gross));
  const rearAt = SIDE_PX + most(front) * pxPerKg + GAP_PX;
  return {
    pxPerKg,
    high: row(2),
    bars: [
      { ...start, sum: front, top: row(0), emptyKg: empty.frontKg, axleX: x(0) },
      { sum: rear, left: rearAt, top: row(0), emptyKg: empty.rearKg, axleX: x(wheelbaseM) },
      { ...start, sum: gross, top: row(1), emptyKg: empty.grossKg },
    ],
  };
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
        class={SPARE_SHADE[levelOf(sum, settings.value.loadMarginKg)]}
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
    ['load-bar-empty', 'empty vehicle', 112],
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
