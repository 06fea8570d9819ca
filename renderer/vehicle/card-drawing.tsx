import type { CardFigure } from '../../geo/vehicle/bounds.ts';
import type { Figures } from '../../geo/vehicle/form/card-of.ts';
import type { ReadPlaces } from '../../geo/vehicle/form/read-places.ts';
import { sayTicks } from '../../geo/vehicle/form/say-ticks.ts';
import { PlaceTicks } from './places/place-ticks.tsx';

const WIDTH_PX = 560;
const PAD_PX = 34;
const WHEEL_M = 0.34;

interface Props {
  readonly figures: Figures;
  readonly rackFitted: boolean;
  readonly places: ReadPlaces['rows'];
}

/** Side and top view to one scale, following the figures as they are typed. Usual ones give the shape of what is missing, which is lettered `?`. */
export function CardDrawing({ figures, rackFitted, places }: Props) {
  const at = layOut(figures);
  const told = (key: CardFigure) => figures[key]?.toFixed(2) ?? '?';
  const say = `Side and top view: ${told('lengthM')} m long, ${told('heightM')} m high, ${told('widthM')} m wide, ${told('widthMirrorsM')} m over mirrors.${sayTicks(places)}`;
  const rack = rackFitted ? 'card-rack' : 'card-rack card-rack-off';
  return (
    <svg class="card-drawing" viewBox={`0 0 ${WIDTH_PX} ${Math.ceil(at.tallPx)}`} role="img" aria-label={say}>
      <SideView at={at} told={told} rack={rack} places={places} />
      <TopView at={at} told={told} rack={rack} />
    </svg>
  );
}

/** The sizes drawn, metres, and where they lie on the paper, pixels. */
interface Layout {
  readonly front: number;
  readonly base: number;
  readonly rear: number;
  readonly height: number;
  readonly width: number;
  readonly mirrors: number;
  readonly rackLong: number;
  readonly rackWide: number;
  readonly clearance: number;
  /** pixels a metre */
  readonly scale: number;
  /** x of a distance behind the nose */
  x(m: number): number;
  /** y of a height above the ground */
  y(m: number): number;
  readonly groundPx: number;
  /** y of the middle of the top view */
  readonly middlePx: number;
  readonly tallPx: number;
}

function layOut(figures: Figures): Layout {
  const { frontOverhangM: front = 0.95, wheelbaseM: base = 3.8, rearOverhangM: rear = 2 } = figures;
  const { heightM: height = 2.9, widthM: width = 2.3, rackLengthM: rackLong = 0 } = figures;
  const mirrors = Math.max(width, figures.widthMirrorsM ?? width + 0.45);
  const scale = (WIDTH_PX - 2 * PAD_PX) / Math.max(3, front + base + rear + rackLong);
  const groundPx = PAD_PX + height * scale;
  const middlePx = groundPx + 44 + (mirrors / 2) * scale;
  return {
    front,
    base,
    rear,
    height,
    width,
    mirrors,
    rackLong,
    rackWide: figures.rackWidthM ?? 1.8,
    clearance: Math.min(height / 3, figures.rearClearanceM ?? 0.35),
    scale,
    x: (m) => PAD_PX + m * scale,
    y: (m) => groundPx - m * scale,
    groundPx,
    middlePx,
    tallPx: middlePx + (mirrors / 2) * scale + 26,
  };
}

interface ViewProps {
  readonly at: Layout;
  /** class of the rack: solid when it is fitted */
  readonly rack: string;
  told(key: CardFigure): string;
}

function SideView({ at, told, rack, places }: ViewProps & Pick<Props, 'places'>) {
  const { front, base, rear, height, clearance, rackLong, scale, x, y, groundPx } = at;
  const length = front + base + rear;
  return (
    <>
      <path
        class="card-body"
        d={`M${x(0)} ${y(clearance)}V${y(Math.min(1.1, height * 0.45))}L${x(Math.min(0.9, front))} ${y(height * 0.72)}L${x(front * 0.4 + 0.6)} ${y(height)}H${x(length)}V${y(clearance)}Z`}
      />
      <PlaceTicks rows={places} atX={(m) => x(front + m)} atY={(share) => y(height * share)} />
      {[front, front + base].map((m) => (
        <circle key={m} class="card-wheel" cx={x(m)} cy={y(WHEEL_M)} r={WHEEL_M * scale} />
      ))}
      {rackLong > 0 && (
        <rect class={rack} x={x(length)} y={y(1.3)} width={rackLong * scale} height={0.6 * scale} />
      )}
      <line class="card-ground" x1={PAD_PX / 2} x2={WIDTH_PX - PAD_PX / 2} y1={groundPx} y2={groundPx} />
      <Along x1={x(0)} x2={x(front)} y={groundPx + 16} text={told('frontOverhangM')} />
      <Along x1={x(front)} x2={x(front + base)} y={groundPx + 16} text={told('wheelbaseM')} />
      <Along x1={x(front + base)} x2={x(length)} y={groundPx + 16} text={told('rearOverhangM')} />
      <g class="card-dimension">
        <path d={`M${PAD_PX / 2} ${groundPx}V${y(height)}m-4 0h8m-8 ${height * scale}h8`} />
        <text transform={`translate(${PAD_PX / 2 - 4} ${y(height / 2)}) rotate(-90)`}>
          {told('heightM')} m
        </text>
      </g>
    </>
  );
}

function TopView({ at, told, rack }: ViewProps) {
  const { front, base, rear, width, mirrors, rackLong, rackWide, scale, x, middlePx } = at;
  const length = front + base + rear;
  return (
    <>
      <rect
        class="card-body"
        x={x(0)}
        y={middlePx - (width / 2) * scale}
        width={length * scale}
        height={width * scale}
        rx={6}
      />
      {[-1, 1].map((sign) => (
        <line
          key={sign}
          class="card-mirror"
          x1={x(Math.min(front, 0.8))}
          x2={x(Math.min(front, 0.8))}
          y1={middlePx + sign * (width / 2) * scale}
          y2={middlePx + sign * (mirrors / 2) * scale}
        />
      ))}
      {rackLong > 0 && (
        <rect
          class={rack}
          x={x(length)}
          y={middlePx - (rackWide / 2) * scale}
          width={rackLong * scale}
          height={rackWide * scale}
        />
      )}
      <Along x1={x(0)} x2={x(length)} y={middlePx + 4} text={`${told('lengthM')} m`} />
      <text class="card-word" x={x(length / 2)} y={middlePx + (mirrors / 2) * scale + 18}>
        body {told('widthM')} m, over mirrors {told('widthMirrorsM')} m
      </text>
    </>
  );
}

function Along({ x1, x2, y, text }: { x1: number; x2: number; y: number; text: string }) {
  return (
    <g class="card-dimension">
      <path d={`M${x1} ${y - 4}v8m0 -4H${x2}m0 -4v8`} />
      <text x={(x1 + x2) / 2} y={y - 4}>
        {text}
      </text>
    </g>
  );
}
