import type { Sum } from '../../../geo/report/deciding.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { Dimension } from '../../look/dimension.tsx';

const WIDE = 360;
const HIGH = 120;
const LEFT = 20;

/** The vehicle from above beside the length that is allowed, both from the same line, to scale. */
export function LengthFigure({
  card,
  limitM,
  neededM,
  sum,
}: {
  card: VehicleCard;
  limitM: number;
  neededM: number;
  sum: Sum;
}) {
  const scale = (WIDE - 2 * LEFT) / Math.max(limitM, neededM);
  const x = (m: number) => LEFT + m * scale;
  const wide = card.widthM * scale;
  const top = 66 - wide / 2;
  const [low, high] = [Math.min(x(limitM), x(neededM)), Math.max(x(limitM), x(neededM))];
  const rack = card.rack?.fitted === true ? card.rack : undefined;
  return (
    <svg viewBox={`0 0 ${WIDE} ${HIGH}`} class="figure" aria-hidden="true">
      <path
        d={`M${x(0) + 10} ${top}H${x(card.lengthM)}v${wide}H${x(0) + 10}q-10 0 -10 -${wide / 2}t10 -${wide / 2}z`}
        class="body"
      />
      <path
        d={`M${x(0.7)} ${top + 5}l${0.35 * scale} -2v${wide - 6}l${-0.35 * scale} -2q-5 -${wide / 2 - 5} 0 -${wide - 10}z`}
        class="glass"
      />
      {rack && (
        <path
          d={`M${x(card.lengthM)} ${66 - (rack.widthM * scale) / 2}H${x(card.lengthM + rack.lengthM)}v${rack.widthM * scale}H${x(card.lengthM)}`}
          class="mirror"
        />
      )}
      <path d={`M${low} ${top - 4}H${high}V${top + wide + 4}H${low}z`} class={sum.over ? 'over' : 'spare'} />
      <path d={`M${x(limitM)} ${top - 14}V${top + wide + 14}`} class="line" />
      <Dimension upright={false} from={x(0)} to={x(limitM)} across={22} text={sum.limit} />
      <Dimension upright={false} from={x(0)} to={x(neededM)} across={HIGH - 4} text={sum.vehicle} />
    </svg>
  );
}
