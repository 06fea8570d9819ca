import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import { type LoadLevel, loadLevel } from '../../../geo/load/weigh/load-level.ts';
import {
  about,
  kgText,
  LIMIT_NAME,
  LIMIT_SAID,
  sayBalance,
  sayPlates,
  sumText,
} from '../../../geo/load/weigh/say-plates.ts';
import { alsoOver, decidingOf, type PlateSum } from '../../../geo/load/weigh/sums.ts';
import { settings } from '../../state/kept.ts';

const TONE: Readonly<Record<LoadLevel, string>> = {
  over: 'decides level-barred',
  tight: 'decides level-tight',
  within: 'decides',
};

/** What is over, or where the least is left, as plate − load = spare; whatever else is over; the front share. */
export function Decides({ result }: { result: LoadFigures }) {
  const first = decidingOf(result);
  const level = loadLevel(result, settings.value.loadMarginKg);
  const also = alsoOver(result);
  return (
    <div class="sum load-decides">
      <p class={TONE[level]}>
        <Headline level={level} first={first} />
      </p>
      <p class="sum-line">
        {LIMIT_NAME[first.limit]} <b>{sumText(first)}</b>
      </p>
      {also.length > 0 && <p class="load-also">Also {sayPlates(also)}.</p>}
      <p class="small soft">{sayBalance(result, settings.value.units)}</p>
    </div>
  );
}

function Headline({ level, first }: { level: LoadLevel; first: PlateSum }) {
  const { limit, spareKg } = first;
  const number = (
    <span class="decides-number">
      {about(first)}
      {kgText(Math.abs(spareKg), level === 'over' ? 'up' : 'down')}
    </span>
  );
  if (level === 'over')
    return (
      <>
        {number} over the {LIMIT_SAID[limit]}
      </>
    );
  return (
    <>
      {level === 'tight' ? 'Tight; least' : 'Least'} spare: {LIMIT_NAME[limit]}, {number}
    </>
  );
}
