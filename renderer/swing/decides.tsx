import { type Judged, swingingEnd } from '../../geo/swing/lessons/read/judge.ts';
import { gapSumIn, sayDecides, sayOutcome } from '../../geo/swing/lessons/tell/say-decides.ts';
import { sayFixture } from '../../geo/swing/lessons/tell/say-part.ts';
import { shortIn } from '../../geo/units/in-units.ts';
import { settings } from '../state/kept.ts';
import type { Shown } from './state/shown.ts';
import { Who } from './who.tsx';

/** The number that decides, and the sum it comes from. */
export function Decides({ of, named }: { of: Shown; named: boolean }) {
  const { units } = settings.value;
  const { judged, scene } = of;
  if (!judged) return null;
  const end = swingingEnd(scene);
  const { number, says } = sayDecides(judged, end, units);
  return (
    <div class="sum swing-sum">
      {named && (
        <p class="small">
          <Who of={of} />
        </p>
      )}
      <p class={`decides level-${judged.level}`}>
        <span class="decides-number">{number}</span> {says}
      </p>
      <SumLine judged={judged} end={end} />
      <p class="swing-contact">{sayOutcome(judged, end, units).join(' ')}</p>
    </div>
  );
}

/** gap − swing = spare; where no gap decides, the most swing and what else comes near. */
function SumLine({ judged, end }: { judged: Judged; end: 'tail' | 'nose' }) {
  const { units } = settings.value;
  const { decides, least, mostSwingM } = judged;
  if (decides.kind === 'swing') return null;
  if (decides.kind === 'gap') {
    const sum = gapSumIn(units, decides);
    return (
      <p class="sum-line">
        <span>
          gap <b>{sum.limit}</b>
        </span>{' '}
        −{' '}
        <span>
          {end} swing beside it <b>{sum.needed}</b>
        </span>{' '}
        ={' '}
        <span>
          <b>{sum.spare}</b>
        </span>
      </p>
    );
  }
  return (
    <p class="sum-line">
      {end} swing on the whole way at most <b>{shortIn(units, mostSwingM, 'up')}</b>
      {decides.kind === 'over' && least && (
        <>
          ; its {least.part.kind === 'wheel' ? 'wheels stay' : 'body stays'}{' '}
          <b>{shortIn(units, least.gapM, 'down')}</b> clear of {sayFixture(least.fixture)}
        </>
      )}
    </p>
  );
}
