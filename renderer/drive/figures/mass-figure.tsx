import type { Sum } from '../../../geo/report/deciding.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';

const WIDE = 360;
const HIGH = 178;
const LEFT = 20;

/**
 * The vehicle on the scale, to scale in itself, above the limit and its mass as two bars to one scale.
 * @param axle which axle alone stands on the scale, where one does
 */
export function MassFigure({
  card,
  limitKg,
  neededKg,
  sum,
  axle,
}: {
  card: VehicleCard;
  limitKg: number;
  neededKg: number;
  sum: Sum;
  axle: 'front' | 'rear' | undefined;
}) {
  const ground = 92;
  const scale = Math.min((WIDE - 2 * LEFT) / card.lengthM, 78 / card.heightM);
  const x = (m: number) => (WIDE - card.lengthM * scale) / 2 + m * scale;
  const y = (m: number) => ground - m * scale;
  const front = card.frontOverhangM;
  const rear = card.frontOverhangM + card.wheelbaseM;
  const radius = 0.36 * scale;
  const [from, to] = axle === 'front' ? [front, front] : axle === 'rear' ? [rear, rear] : [front, rear];
  const bar = (WIDE - 2 * LEFT) / Math.max(limitKg, neededKg);
  const [low, high] = [Math.min(limitKg, neededKg) * bar, Math.max(limitKg, neededKg) * bar];
  return (
    <svg viewBox={`0 0 ${WIDE} ${HIGH}`} class="figure" aria-hidden="true">
      <path
        d={`M${x(0)} ${y(0.4)}V${y(0.95)}L${x(0.7)} ${y(1.25)}L${x(1.4)} ${y(2.05)}L${x(1.6)} ${y(card.heightM - 0.2)}L${x(2.1)} ${y(card.heightM)}H${x(card.lengthM)}V${y(0.4)}z`}
        class="body"
      />
      <path d={`M${x(1)} ${y(1.35)}L${x(1.5)} ${y(1.95)}H${x(2.1)}V${y(1.35)}z`} class="glass" />
      {[front, rear].map((m) => (
        <circle key={m} cx={x(m)} cy={ground - radius} r={radius} class="wheel" />
      ))}
      <path d={`M${x(from) - 16} ${ground}H${x(to) + 16}v6H${x(from) - 16}z`} class="stone" />
      <path d={`M0 ${ground}H${WIDE}`} class="line" />
      <path d={`M${LEFT} 122h${limitKg * bar}v10h${-limitKg * bar}z`} class="stone" />
      <path d={`M${LEFT} 154h${neededKg * bar}v10h${-neededKg * bar}z`} class="body" />
      <path
        d={`M${LEFT + low} ${sum.over ? 154 : 122}h${high - low}v10h${low - high}z`}
        class={sum.over ? 'over' : 'spare'}
      />
      <path d={`M${LEFT + limitKg * bar} 116V170`} class="line" />
      <text x={LEFT} y={116}>
        limit {sum.limit}
      </text>
      <text x={LEFT} y={148}>
        vehicle {sum.vehicle}
      </text>
    </svg>
  );
}
