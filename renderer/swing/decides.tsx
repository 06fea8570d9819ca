import type { Decides as DecidingFigure, Judged } from '../../geo/swing/lessons/read/judge.ts';
import { gapSumIn, spareWord } from '../../geo/swing/lessons/tell/announce.ts';
import { sayContact, sayOver } from '../../geo/swing/lessons/tell/say-contact.ts';
import { sayFixture } from '../../geo/swing/lessons/tell/say-part.ts';
import { shortIn } from '../../geo/units/in-units.ts';
import { clip } from '../../geo/units/text.ts';
import { settings } from '../state/kept.ts';
import type { Shown } from './state/shown.ts';

/** The number that decides, and the sum it comes from. */
export function Decides({ of, named }: { of: Shown; named: boolean }) {
  const { units } = settings.value;
  const { judged, scene } = of;
  if (!judged) return null;
  const end = scene.reversing ? 'nose' : 'tail';
  return (
    <div class="sum swing-sum">
      {named && (
        <p class="small">
          <bdi>{clip(of.card.name, 60)}</bdi>
        </p>
      )}
      <p class={`decides level-${judged.level}`}>
        <DecidingNumber decides={judged.decides} end={end} />
      </p>
      <SumLine judged={judged} end={end} />
      <p class="swing-contact">
        {judged.over ? sayOver(judged.over, units) : ''} {sayContact(judged.contact, units)}
      </p>
    </div>
  );
}

type End = 'nose' | 'tail';

function DecidingNumber({ decides, end }: { decides: DecidingFigure; end: End }) {
  const { units } = settings.value;
  switch (decides.kind) {
    case 'gap':
      return <Big number={gapSumIn(units, decides).short} says={spareWord(decides.spareM)} />;
    case 'touch':
      return <Big number="touches" says={sayFixture(decides.contact.fixture)} />;
    case 'over':
      return (
        <Big
          number={shortIn(units, decides.over.overM, 'up')}
          says={`over ${sayFixture(decides.over.fixture)}`}
        />
      );
    case 'spare':
      return (
        <Big
          number={shortIn(units, decides.least.gapM, 'down')}
          says={`spare to ${sayFixture(decides.least.fixture)}`}
        />
      );
    case 'swing':
      return <Big number={shortIn(units, decides.swingM, 'up')} says={`${end} swing`} />;
  }
}

function Big({ number, says }: { number: string; says: string }) {
  return (
    <>
      <span class="decides-number">{number}</span> {says}
    </>
  );
}

/** gap − swing = spare; where no gap decides, the most swing and what else comes near. */
function SumLine({ judged, end }: { judged: Judged; end: End }) {
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
          {end} swing <b>{sum.needed}</b>
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
      {end} swing at most <b>{shortIn(units, mostSwingM, 'up')}</b>
      {decides.kind === 'over' && least && (
        <>
          ; <b>{shortIn(units, least.gapM, 'down')}</b> spare to {sayFixture(least.fixture)}
        </>
      )}
    </p>
  );
}
