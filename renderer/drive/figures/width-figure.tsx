import type { Sum } from '../../../geo/report/deciding.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { Dimension } from '../../look/dimension.tsx';

const WIDE = 360;
const HIGH = 182;

/**
 * The vehicle's front part from above, coming up to the gap between two posts, to scale.
 * @param limitM the gap; @param neededM the width that must pass
 */
export function WidthFigure({
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
  const scale = 210 / Math.max(limitM, neededM, card.widthMirrorsM);
  const mid = WIDE / 2;
  const gap = (limitM * scale) / 2;
  const body = (card.widthM * scale) / 2;
  const needed = (neededM * scale) / 2;
  const mirrors = neededM > card.widthM ? needed : Math.max(body, (card.widthMirrorsM * scale) / 2);
  const nose = 62;
  const posts = 44;
  const side = (sign: number) => {
    const [from, to] = [mid + sign * gap, mid + sign * needed];
    return `M${from} ${posts - 6}H${to}V${HIGH - 46}H${from}z`;
  };
  return (
    <svg viewBox={`0 0 ${WIDE} ${HIGH}`} class="figure" aria-hidden="true">
      <path
        d={`M${mid - body} ${HIGH - 34}V${nose + 16}q0 -14 18 -16H${mid + body - 18}q18 2 18 16V${HIGH - 34}`}
        class="body"
      />
      <path
        d={`M${mid - body + 10} ${nose + 26}q${body - 10} -18 ${2 * body - 20} 0l-8 16q${-(body - 18)} -10 ${-(2 * body - 36)} 0z`}
        class="glass"
      />
      <path
        d={`M${mid - body} ${nose + 34}H${mid - mirrors}v-8M${mid + body} ${nose + 34}H${mid + mirrors}v-8`}
        class="mirror"
      />
      <path d={side(-1)} class={sum.over ? 'over' : 'spare'} />
      <path d={side(1)} class={sum.over ? 'over' : 'spare'} />
      <path
        d={`M${mid - gap - 44} ${posts - 8}H${mid - gap}v16H${mid - gap - 44}zM${mid + gap} ${posts - 8}h44v16h-44z`}
        class="stone"
      />
      <Dimension upright={false} from={mid - gap} to={mid + gap} across={24} text={sum.limit} />
      <Dimension upright={false} from={mid - needed} to={mid + needed} across={HIGH - 6} text={sum.vehicle} />
    </svg>
  );
}
