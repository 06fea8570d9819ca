import type { ComponentChildren } from 'preact';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { FLOOR_M, type Layout, UNDERSIDE_M, WHEEL_M } from './layout.ts';

/** The vehicle from its left, front to the left: body, cab, floor, wheels and rack, to scale. */
export function VehicleSide({
  card,
  at,
  children,
}: {
  card: VehicleCard;
  at: Layout;
  /** behind the wheels */
  children: ComponentChildren;
}) {
  const { x, y, pxPerM } = at;
  const { heightM, frontOverhangM: front, wheelbaseM, rearOverhangM } = card;
  const tail = wheelbaseM + rearOverhangM;
  const bonnet = Math.min(1.1, heightM * 0.42);
  const screen = heightM * 0.68;
  const archM = WHEEL_M + 0.07;
  const arch = (m: number) =>
    `H${x(m + archM)}A${archM * pxPerM} ${archM * pxPerM} 0 0 0 ${x(m - archM)} ${y(UNDERSIDE_M)}`;
  const glassFrom = Math.min(0, front * 0.4 - front);
  return (
    <g>
      <path
        class="load-body"
        d={`M${x(-front)} ${y(UNDERSIDE_M)}V${y(bonnet)}L${x(-front + Math.min(0.85, front))} ${y(screen)}L${x(-front * 0.5 + 0.45)} ${y(heightM)}H${x(tail)}V${y(UNDERSIDE_M)}${arch(wheelbaseM)}${arch(0)}Z`}
      />
      <path
        class="load-glass"
        d={`M${x(glassFrom)} ${y(bonnet + 0.12)}L${x(glassFrom + 0.45)} ${y(screen - 0.06)}H${x(0.62)}V${y(bonnet + 0.12)}Z`}
      />
      <path class="load-line" d={`M${x(-0.2)} ${y(FLOOR_M)}H${x(tail)}`} />
      {children}
      {[0, wheelbaseM].map((m) => (
        <g key={m}>
          <circle class="load-tyre" cx={x(m)} cy={y(WHEEL_M)} r={WHEEL_M * pxPerM} />
          <circle class="load-hub" cx={x(m)} cy={y(WHEEL_M)} r={WHEEL_M * 0.5 * pxPerM} />
        </g>
      ))}
      {(card.seats ?? []).map(({ name, xM }) => (
        <path
          key={name}
          class="load-seat"
          d={`M${x(xM - 0.2)} ${y(FLOOR_M + 0.38)}H${x(xM + 0.24)}V${y(FLOOR_M + 0.86)}M${x(xM)} ${y(FLOOR_M + 0.38)}V${y(FLOOR_M)}`}
        />
      ))}
      {card.rack?.fitted && (
        <path
          class="load-rack"
          d={`M${x(tail)} ${y(FLOOR_M)}H${x(tail + card.rack.lengthM)}V${y(FLOOR_M + 0.25)}M${x(tail)} ${y(UNDERSIDE_M + 0.1)}L${x(tail + card.rack.lengthM * 0.7)} ${y(FLOOR_M)}`}
        />
      )}
      <path class="load-ground" d={`M${x(-front) - 20} ${y(0)}H${x(at.endM) + 20}`} />
      {[0, wheelbaseM].map((m) => (
        <path key={m} class="load-deck" d={`M${x(m) - 24} ${y(0)}h48v6h-48z`} />
      ))}
    </g>
  );
}
