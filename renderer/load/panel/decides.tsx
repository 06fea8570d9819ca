import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import {
  kgText,
  LIMIT_NAME,
  LIMIT_SAID,
  sayBalance,
  sayPlates,
  sumText,
} from '../../../geo/load/weigh/say-plates.ts';
import { alsoOver, decidingOf } from '../../../geo/load/weigh/sums.ts';
import { settings } from '../../state/kept.ts';

/** What is reached first, as plate − load = spare; whatever else is over; the front share. */
export function Decides({ result }: { result: LoadFigures }) {
  const first = decidingOf(result);
  const { limit, spareKg, over } = first;
  const also = alsoOver(result);
  return (
    <div class="sum load-decides">
      <p class={`decides level-${over ? 'barred' : 'care'}`}>
        <span class="decides-number">{kgText(Math.abs(spareKg), over ? 'up' : 'down')}</span>{' '}
        {over ? `over the ${LIMIT_SAID[limit]}` : `spare; the ${LIMIT_SAID[limit]} is reached first`}
      </p>
      <p class="sum-line">
        {LIMIT_NAME[limit]} <b>{sumText(first)}</b>
      </p>
      {also.length > 0 && <p class="load-also">Also {sayPlates(also)}.</p>}
      <p class="small soft">{sayBalance(result, settings.value.units)}</p>
    </div>
  );
}
