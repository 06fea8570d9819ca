import { smallest } from '../../geo/lists.ts';
import { type Judged, swingingEnd } from '../../geo/swing/lessons/read/judge.ts';
import { LEARN, titleOf } from '../../geo/swing/lessons/tell/names.ts';
import { gapSumIn, sayDecides, sayOutcome } from '../../geo/swing/lessons/tell/say-decides.ts';
import { sayRack } from '../../geo/swing/lessons/tell/say-rack.ts';
import { tellScene } from '../../geo/swing/lessons/tell/tell-scene.ts';
import { LOCK_FROM, sayModel } from '../../geo/swing/say-model.ts';
import { sizeIn, wayIn } from '../../geo/units/in-units.ts';
import { clip } from '../../geo/units/text.ts';
import { settings } from '../state/kept.ts';
import { FanDrawing, fanScale } from './drawing/fan-drawing.tsx';
import { Legend } from './drawing/legend.tsx';
import type { Box } from './drawing/projection.ts';
import { toneOf } from './drawing/tone.ts';
import { KeyList } from './key-list.tsx';
import { picked } from './state/lesson.ts';
import { byHand, type Shown, shown, shownBeside } from './state/shown.ts';
import { Who } from './who.tsx';

const WIDE_PX = 720;

/** One page of A4: the fan of positions, the figures and the sentences, and room to write. Seen on paper alone. */
export function LessonPage() {
  const main = shown.value;
  if (!main) return null;
  // by hand there is no lesson to take home, and nothing to draw anew at every frame
  if (byHand.value)
    return (
      <article class="lesson-page" aria-hidden="true">
        <p>The vehicle is steered by hand. Go back to the lesson, then print its page.</p>
      </article>
    );
  const { scene } = main;
  const beside = shownBeside.value;
  const box = { widthPx: WIDE_PX, heightPx: beside ? 76 : 330 };
  const all = beside ? [main, beside] : [main];
  const pxPerM = smallest(all.map((each) => fanScale(each.scene, box)));
  return (
    <article class="lesson-page" aria-hidden="true">
      <h1>{titleOf(scene)}</h1>
      {scene.lesson === 'drive-turn' && picked.value?.where && <p>{clip(picked.value.where, 80)}</p>}
      <p class="lesson-learn">{LEARN[scene.lesson]}</p>
      <Legend />
      <div class="lesson-figures">
        {all.map((each, index) => (
          <StillFigure key={index === 0 ? 'main' : 'beside'} of={each} box={box} pxPerM={pxPerM} />
        ))}
      </div>
      <div class={beside ? 'lesson-columns lesson-two' : 'lesson-columns'}>
        {all.map((each, index) => (
          <Words key={index === 0 ? 'main' : 'beside'} of={each} />
        ))}
        {!beside && <div class="lesson-notes">Notes</div>}
      </div>
      {beside && <div class="lesson-notes lesson-notes-low">Notes</div>}
      {all.map((each, index) => (
        <Sizes key={index === 0 ? 'main' : 'beside'} of={each} named={beside !== undefined} />
      ))}
    </article>
  );
}

/** What happens, and what that rests on. */
function Words({ of: { scene } }: { of: Shown }) {
  const { units } = settings.value;
  return (
    <div>
      {[...tellScene(scene, units), sayModel(scene.vehicle.lock, units)].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}

/** What the figures rest on. */
function Sizes({ of, named }: { of: Shown; named: boolean }) {
  const { units } = settings.value;
  const { wheelbaseM, rearOverhangM, widthM, lock, rack } = of.scene.vehicle;
  const own = of.card.rack !== undefined;
  return (
    <p class="small">
      {named && <bdi>{clip(of.card.name, 60)}: </bdi>}
      {named ? 'wheelbase' : 'Wheelbase'} {sizeIn(units, wheelbaseM, 'nearest')}, rear overhang{' '}
      {sizeIn(units, rearOverhangM, 'nearest')}, body {sizeIn(units, widthM, 'nearest')} wide,{' '}
      {rack
        ? `${sayRack({ rack }, units)} counted, ${sizeIn(units, rack.widthM, 'nearest')} wide`
        : own
          ? 'its rack not counted'
          : 'no rack'}
      , radius of the rear axle at full lock {wayIn(units, lock.rearAxleRadiusM)} ({LOCK_FROM[lock.from]}).
    </p>
  );
}

function StillFigure({ of, box, pxPerM }: { of: Shown; box: Box; pxPerM: number }) {
  const { judged } = of;
  return (
    <figure>
      <figcaption>
        <b>
          <Who of={of} />
        </b>
        {judged && <Headline judged={judged} end={swingingEnd(of.scene)} />}
      </figcaption>
      <FanDrawing scene={of.scene} {...box} pxPerM={pxPerM} tone={toneOf(of.judged?.level)} />
      <KeyList scene={of.scene} />
    </figure>
  );
}

/** What stands large in the window. */
function Headline({ judged, end }: { judged: Judged; end: 'tail' | 'nose' }) {
  const { units } = settings.value;
  const { decides } = judged;
  const sum = decides.kind === 'gap' ? gapSumIn(units, decides) : undefined;
  const { number, says } = sayDecides(judged, end, units);
  return (
    <>
      : {sum && `gap ${sum.limit} − swing ${sum.needed} = `}
      <b>
        {number} {says}
      </b>
      . {sayOutcome(judged, end, units).join(' ')}
    </>
  );
}
