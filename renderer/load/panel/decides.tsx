import type { LoadResult } from '../../../geo/load/result.ts';
import { LIMIT_NAME } from '../../../geo/load/say-load.ts';
import {
  decidingOf,
  kgText,
  LIMIT_SAID,
  sayPlate,
  sumsOf,
  sumText,
} from '../../../geo/load/weigh/say-plates.ts';

/** What binds first, as plate − load = spare; whatever else is over; the front share. */
export function Decides({ result }: { result: LoadResult }) {
  const first = decidingOf(result);
  const { limit, spareKg, over } = first;
  const also = sumsOf(result).filter((sum) => sum.limit !== limit && result.over.includes(sum.limit));
  return (
    <div class="sum load-decides">
      <p class={`decides level-${over ? 'barred' : 'care'}`}>
        <span class="decides-number">{kgText(Math.abs(spareKg), over ? 'up' : 'down')}</span>{' '}
        {over ? `over the ${LIMIT_SAID[limit]}` : `spare; the ${LIMIT_SAID[limit]} binds first`}
      </p>
      <p class="sum-line">
        {LIMIT_NAME[limit]} <b>{sumText(first)}</b>
      </p>
      {also.length > 0 && <p class="load-also">Also {also.map(sayPlate).join(', ')}.</p>}
      <p class="small soft">
        Centre of mass {result.centreM.toFixed(2)} m behind the front axle:{' '}
        {(result.frontShare * 100).toFixed(0)} % on the front.
        {result.rack &&
          ` Rack ${kgText(result.rack.onKg, 'up')} of ${kgText(result.rack.limitKg, 'down')}${result.rack.limitFrom === 'card' ? '' : ', common practice: its own limit is not on the card'}.`}
      </p>
    </div>
  );
}
