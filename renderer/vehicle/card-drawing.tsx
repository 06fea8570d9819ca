import { drawnSizeIn, type Units } from '../../geo/units/in-units.ts';
import type { CardFigure } from '../../geo/vehicle/bounds.ts';
import type { Figures } from '../../geo/vehicle/form/card-of.ts';
import { letterOf } from '../../geo/vehicle/form/fields.ts';
import type { ReadPlaces } from '../../geo/vehicle/form/read-places.ts';
import { sayTicks } from '../../geo/vehicle/form/say-ticks.ts';
import { PlaceTicks } from './places/place-ticks.tsx';

const WIDTH_PX = 560;
const PAD_PX = 34;
const WHEEL_M = 0.34;
/** Where the height is drawn: its letters, turned, stand left of it, on a narrow screen twice as large. */
const HEIGHT_AT_PX = PAD_PX - 8;

interface Props {
  readonly figures: Figures;
  readonly rackFitted: boolean;
  readonly places: ReadPlaces['rows'];
  readonly units: Units;
}

/** Side and top view to one scale, following the figures as they are typed. Usual ones give the shape of what is missing, which is lettered `?`. */
export function CardDrawing({ figures, rackFitted, places, units }: Props) {
  const at = layOut(figures);
  const told = (key: CardFigure) => {
    const m = figures[key];
    return m === undefined ? '?' : drawnSizeIn(units, m, key === 'rearClearanceM' ? 'down' : 'up');
  };
  const say = `Side and top view: ${told('lengthM')} long, ${told('heightM')} high, ${told('widthM')} wide, ${told('widthMirrorsM')} over mirrors.${sayTicks(places)}`;
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
  const middlePx = groundPx + 50 + (mirrors / 2) * scale;
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
    tallPx: middlePx + (mirrors / 2) * scale + 32,
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
      <Along x1={x(0)} x2={x(front)} y={groundPx + 30} of="frontOverhangM" told={told} />
      <Along x1={x(front)} x2={x(front + base)} y={groundPx + 30} of="wheelbaseM" told={told} />
      <Along x1={x(front + base)} x2={x(length)} y={groundPx + 30} of="rearOverhangM" told={told} />
      <g class="card-dimension">
        <path d={`M${HEIGHT_AT_PX} ${groundPx}V${y(height)}m-4 0h8m-8 ${height * scale}h8`} />
        <text transform={`translate(${HEIGHT_AT_PX - 4} ${y(height / 2)}) rotate(-90)`}>
          <Lettered of="heightM" told={told} />
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
      <Along x1={x(0)} x2={x(length)} y={middlePx + 4} of="lengthM" told={told} />
      {rackLong > 0 && (
        <text class="card-word" x={x(length + rackLong / 2)} y={middlePx + (rackWide / 2) * scale + 22}>
          {letterOf('rackLengthM')}, {letterOf('rackWidthM')}
        </text>
      )}
      <Across x={x(length * 0.3)} middlePx={middlePx} halfPx={(width / 2) * scale} of="widthM" told={told} />
      <text class="card-word" x={x(length / 2)} y={middlePx + (mirrors / 2) * scale + 24}>
        over mirrors <Lettered of="widthMirrorsM" told={told} />
      </text>
    </>
  );
}

interface OfSize extends Pick<ViewProps, 'told'> {
  readonly of: CardFigure;
}

/** `A 3.05 m`: the letter stands beside the field of the size too. */
function Lettered({ of, told }: OfSize) {
  return (
    <>
      <tspan class="card-letter-drawn">{letterOf(of)}</tspan> {told(of)}
    </>
  );
}

function Along({ x1, x2, y, ...size }: OfSize & { x1: number; x2: number; y: number }) {
  return (
    <g class="card-dimension">
      <path d={`M${x1} ${y - 4}v8m0 -4H${x2}m0 -4v8`} />
      <text x={(x1 + x2) / 2} y={y - 6}>
        <Lettered {...size} />
      </text>
    </g>
  );
}

/** A size from side to side of the top view. */
function Across({ x, middlePx, halfPx, ...size }: OfSize & { x: number; middlePx: number; halfPx: number }) {
  return (
    <g class="card-dimension">
      <path d={`M${x - 4} ${middlePx - halfPx}h8m-4 0v${2 * halfPx}m-4 0h8`} />
      <text class="card-word-start" x={x + 6} y={middlePx - halfPx / 2 + 4}>
        <Lettered {...size} />
      </text>
    </g>
  );
}
