import type { Sum } from '../../../geo/report/deciding.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { Dimension } from '../../look/dimension.tsx';

const WIDE = 360;
const HIGH = 190;
const GROUND = 174;
const DECK = 18;

/**
 * The vehicle's front under the bridge, to scale.
 * @param limitM the limit; @param neededM the vehicle's height as compared, allowance counted in
 */
export function HeightFigure({
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
  const scale = (GROUND - DECK - 14) / Math.max(limitM, neededM);
  const y = (m: number) => GROUND - m * scale;
  const wide = card.widthM * scale;
  const mirrors = card.widthMirrorsM * scale;
  const mid = WIDE / 2;
  const [left, right] = [mid - wide / 2, mid + wide / 2];
  const opening = Math.max(mirrors + 30, wide * 1.5) / 2;
  const top = y(card.heightM);
  const [high, low] = [Math.min(y(limitM), y(neededM)), Math.max(y(limitM), y(neededM))];
  return (
    <svg viewBox={`0 0 ${WIDE} ${HIGH}`} class="figure" aria-hidden="true">
      <path
        d={`M${left} ${GROUND - 8}V${top + 8}q0 -8 8 -8H${right - 8}q8 0 8 8V${GROUND - 8}z`}
        class="body"
      />
      <path
        d={`M${left + 8} ${y(card.heightM * 0.62)}H${right - 8}V${y(card.heightM * 0.4)}H${left + 8}z`}
        class="glass"
      />
      <path d={`M${left + 6} ${GROUND - 8}v8h16v-8zM${right - 22} ${GROUND - 8}v8h16v-8z`} class="wheel" />
      <path
        d={`M${mid - mirrors / 2} ${y(card.heightM * 0.6)}H${left}M${mid + mirrors / 2} ${y(card.heightM * 0.6)}H${right}M${mid - mirrors / 2} ${y(card.heightM * 0.62)}v${card.heightM * 0.16 * scale}M${mid + mirrors / 2} ${y(card.heightM * 0.62)}v${card.heightM * 0.16 * scale}`}
        class="mirror"
      />
      <path
        d={`M${mid - opening - 26} ${y(limitM) - DECK}H${mid + opening + 26}V${GROUND}H${mid + opening}V${y(limitM)}H${mid - opening}V${GROUND}H${mid - opening - 26}z`}
        class="stone"
      />
      <path d={`M${left} ${high}H${right}V${low}H${left}z`} class={sum.over ? 'over' : 'spare'} />
      <path d={`M0 ${GROUND}H${WIDE}`} class="line" />
      <Dimension upright from={y(limitM)} to={GROUND} across={mid - opening - 36} text={sum.limit} />
      <Dimension
        upright
        from={y(neededM)}
        to={GROUND}
        across={mid + opening + 36}
        side="right"
        text={sum.vehicle}
      />
    </svg>
  );
}
