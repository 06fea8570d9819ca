import type { FieldKey } from '../../geo/vehicle/form/fields.ts';
import type { ReadPlaces } from '../../geo/vehicle/form/read-places.ts';
import { sayTicks } from '../../geo/vehicle/form/say-ticks.ts';
import { PlaceTicks } from './places/place-ticks.tsx';

type Figures = Readonly<Partial<Record<FieldKey, number>>>;

const WIDTH_PX = 560;
const PAD_PX = 34;
const WHEEL_M = 0.34;

/** Side and top view to one scale, following the figures as they are typed. Usual ones give the shape of what is missing, which is lettered `?`. */
export function CardDrawing({
  figures,
  rackFitted,
  places,
}: {
  figures: Figures;
  rackFitted: boolean;
  places: ReadPlaces['rows'];
}) {
  const front = figures.frontOverhangM ?? 0.95;
  const base = figures.wheelbaseM ?? 3.8;
  const rear = figures.rearOverhangM ?? 2;
  const height = figures.heightM ?? 2.9;
  const width = figures.widthM ?? 2.3;
  const mirrors = Math.max(width, figures.widthMirrorsM ?? width + 0.45);
  const length = front + base + rear;
  const told = (key: FieldKey) => figures[key]?.toFixed(2) ?? '?';
  const rack = figures.rackLengthM ?? 0;
  const rackWidth = figures.rackWidthM ?? 1.8;
  const scale = (WIDTH_PX - 2 * PAD_PX) / Math.max(3, length + rack);
  const clearance = Math.min(height / 3, figures.rearClearanceM ?? 0.35);
  const x = (m: number) => PAD_PX + m * scale;
  const ground = PAD_PX + height * scale;
  const side = (m: number) => ground - m * scale;
  const middle = ground + 44 + (mirrors / 2) * scale;
  const tall = middle + (mirrors / 2) * scale + 26;
  const say = `Side and top view: ${told('lengthM')} m long, ${told('heightM')} m high, ${told('widthM')} m wide, ${told('widthMirrorsM')} m over mirrors.${sayTicks(places)}`;
  return (
    <svg class="card-drawing" viewBox={`0 0 ${WIDTH_PX} ${Math.ceil(tall)}`} role="img" aria-label={say}>
      <path
        class="card-body"
        d={`M${x(0)} ${side(clearance)}V${side(Math.min(1.1, height * 0.45))}L${x(Math.min(0.9, front))} ${side(height * 0.72)}L${x(front * 0.4 + 0.6)} ${side(height)}H${x(length)}V${side(clearance)}Z`}
      />
      <PlaceTicks rows={places} atX={(m) => x(front + m)} atY={(share) => side(height * share)} />
      {[front, front + base].map((m) => (
        <circle key={m} class="card-wheel" cx={x(m)} cy={side(WHEEL_M)} r={WHEEL_M * scale} />
      ))}
      {rack > 0 && (
        <rect
          class={rackFitted ? 'card-rack' : 'card-rack card-rack-off'}
          x={x(length)}
          y={side(1.3)}
          width={rack * scale}
          height={0.6 * scale}
        />
      )}
      <line class="card-ground" x1={PAD_PX / 2} x2={WIDTH_PX - PAD_PX / 2} y1={ground} y2={ground} />
      <Along x1={x(0)} x2={x(front)} y={ground + 16} text={told('frontOverhangM')} />
      <Along x1={x(front)} x2={x(front + base)} y={ground + 16} text={told('wheelbaseM')} />
      <Along x1={x(front + base)} x2={x(length)} y={ground + 16} text={told('rearOverhangM')} />
      <g class="card-dimension">
        <path d={`M${PAD_PX / 2} ${ground}V${side(height)}m-4 0h8m-8 ${height * scale}h8`} />
        <text transform={`translate(${PAD_PX / 2 - 4} ${side(height / 2)}) rotate(-90)`}>
          {told('heightM')} m
        </text>
      </g>
      <rect
        class="card-body"
        x={x(0)}
        y={middle - (width / 2) * scale}
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
          y1={middle + sign * (width / 2) * scale}
          y2={middle + sign * (mirrors / 2) * scale}
        />
      ))}
      {rack > 0 && (
        <rect
          class={rackFitted ? 'card-rack' : 'card-rack card-rack-off'}
          x={x(length)}
          y={middle - (rackWidth / 2) * scale}
          width={rack * scale}
          height={rackWidth * scale}
        />
      )}
      <Along x1={x(0)} x2={x(length)} y={middle + 4} text={`${told('lengthM')} m`} />
      <text class="card-word" x={x(length / 2)} y={middle + (mirrors / 2) * scale + 18}>
        body {told('widthM')} m, over mirrors {told('widthMirrorsM')} m
      </text>
    </svg>
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
