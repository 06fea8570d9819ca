import type { Sum } from '../../../geo/report/deciding.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { Dimension } from '../../look/dimension.tsx';

const WIDE = 360;
const HIGH = 262;
/** The vehicle's nose, and where it is cut off: its whole length would leave no room to see centimetres in. */
const NOSE = 52;
const CUT = HIGH - 34;
/** From the nose back to the mirrors, metres, about as on any van. */
const MIRRORS_BACK_M = 0.95;
const POST_PX = 40;
/** How far before and behind the middle of the posts what is over or spare is filled in. */
const BAND_PX = 24;

/**
 * The vehicle from above, its mirrors between the two posts, to scale.
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
  const scale = 196 / Math.max(limitM, neededM, card.widthM);
  const mid = WIDE / 2;
  const gap = (limitM * scale) / 2;
  const body = (card.widthM * scale) / 2;
  const needed = (neededM * scale) / 2;
  const posts = NOSE + MIRRORS_BACK_M * scale;
  // what sticks out over the edge of the gap, or is left beside the vehicle
  const side = (sign: number) =>
    `M${mid + sign * gap} ${posts - BAND_PX}H${mid + sign * needed}V${posts + BAND_PX}H${mid + sign * gap}z`;
  return (
    <svg viewBox={`0 0 ${WIDE} ${HIGH}`} class="figure" aria-hidden="true">
      {[-1, 1].map((sign) => (
        <path
          key={sign}
          d={`M${mid + sign * gap} ${posts - 14}h${sign * POST_PX}v28h${-sign * POST_PX}z`}
          class="stone"
        />
      ))}
      <FromAbove mid={mid} body={body} mirrorsAt={posts} mirrors={Math.max(body, needed)} />
      <path d={side(-1)} class={sum.over ? 'over' : 'spare'} />
      <path d={side(1)} class={sum.over ? 'over' : 'spare'} />
      <path d={`M${mid - gap} 34V${CUT}M${mid + gap} 34V${CUT}`} class="edge-line" />
      <Dimension upright={false} from={mid - gap} to={mid + gap} across={28} text={sum.limit} />
      <Dimension upright={false} from={mid - needed} to={mid + needed} across={HIGH - 6} text={sum.vehicle} />
    </svg>
  );
}

/** Front part of a vehicle seen from above, nose up: bonnet and windscreen, mirrors, a roof light, and the cut. */
function FromAbove({
  mid,
  body,
  mirrors,
  mirrorsAt,
}: {
  mid: number;
  /** half the body's and half the mirrors' width */
  body: number;
  mirrors: number;
  mirrorsAt: number;
}) {
  const [left, right] = [mid - body, mid + body];
  const glass = NOSE + 30;
  const zigzag = Array.from(
    { length: 8 },
    (_, i) => `l${-body / 8} ${i % 2 === 0 ? 5 : -5}l${-body / 8} ${i % 2 === 0 ? -5 : 5}`,
  ).join('');
  return (
    <g>
      <path
        d={`M${left} ${CUT}V${NOSE + 34}Q${left + 2} ${NOSE + 4} ${mid - body * 0.55} ${NOSE}H${mid + body * 0.55}Q${right - 2} ${NOSE + 4} ${right} ${NOSE + 34}V${CUT}${zigzag}z`}
        class="body"
      />
      <path
        d={`M${left + 7} ${glass + 16}Q${mid} ${glass - 26} ${right - 7} ${glass + 16}L${right - 16} ${glass + 30}Q${mid} ${glass + 2} ${left + 16} ${glass + 30}z`}
        class="glass"
      />
      <path
        d={`M${left + 4} ${glass + 40}V${CUT - 8}M${right - 4} ${glass + 40}V${CUT - 8}`}
        class="roof-line"
      />
      <rect x={mid - 26} y={CUT - 58} width={52} height={36} rx={5} class="glass" />
      <path
        d={`M${left} ${mirrorsAt}H${mid - mirrors}v-10M${right} ${mirrorsAt}H${mid + mirrors}v-10`}
        class="mirror"
      />
    </g>
  );
}
