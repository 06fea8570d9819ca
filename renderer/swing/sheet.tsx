import { tellScene } from '../../geo/swing/lessons/tell-scene.ts';
import type { LockSource } from '../../geo/swing/swing-vehicle.ts';
import { clip } from '../drive/words.ts';
import { settings } from '../state/kept.ts';
import { contactSentence, toneOf } from './decides.ts';
import { FanDrawing, fanScale } from './drawing/fan-drawing.tsx';
import type { Box } from './drawing/projection.ts';
import { byHand, lesson, picked, type Shown, shown, shownBeside } from './state.ts';
import { shortText } from './words.ts';

const WIDE_PX = 720;

const LOCK_FROM: Readonly<Record<LockSource, string>> = {
  'rear-axle radius': 'as the card has it',
  'kerb circle': 'from its turning circle between kerbs',
  'wall circle': 'from its turning circle between walls',
  estimate: 'estimated from the wheelbase',
};

/** One page of A4: the fan of positions, the figures and the sentences, and room to write. Seen on paper alone. */
export function LessonSheet() {
  const main = shown.value;
  if (!main) return null;
  // by hand there is no lesson to take home, and nothing to draw anew at every frame
  if (byHand.value)
    return (
      <article class="lesson-sheet" aria-hidden="true">
        <p>The vehicle is steered by hand. Go back to the lesson, then print its sheet.</p>
      </article>
    );
  const { scene } = main;
  const beside = shownBeside.value;
  const box = { widthPx: WIDE_PX, heightPx: beside ? 235 : 470 };
  const all = beside ? [main, beside] : [main];
  const pxPerM = Math.min(...all.map((each) => fanScale(each.scene, box)));
  return (
    <article class="lesson-sheet" aria-hidden="true">
      <h1>{scene.title}</h1>
      {lesson.value === 'drive-turn' && picked.value?.where && <p>{clip(picked.value.where, 80)}</p>}
      <p class="lesson-learn">{scene.learn}</p>
      <div class="lesson-figures">
        {all.map((each, index) => (
          <Still key={index === 0 ? 'main' : 'beside'} of={each} box={box} pxPerM={pxPerM} />
        ))}
      </div>
      <div class="lesson-columns">
        <div>
          {tellScene(scene).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        <div class="lesson-notes">Notes</div>
      </div>
      {all.map((each, index) => (
        <Sizes key={index === 0 ? 'main' : 'beside'} of={each} named={beside !== undefined} />
      ))}
    </article>
  );
}

/** What the figures rest on. */
function Sizes({ of, named }: { of: Shown; named: boolean }) {
  const { wheelbaseM, rearOverhangM, widthM, lock } = of.scene.vehicle;
  return (
    <p class="small">
      {named && <bdi>{clip(of.card.name, 60)}: </bdi>}
      {named ? 'wheelbase' : 'Wheelbase'} {wheelbaseM.toFixed(2)} m, rear overhang {rearOverhangM.toFixed(2)}{' '}
      m, body {widthM.toFixed(2)} m wide, radius of the rear axle at full lock{' '}
      {lock.rearAxleRadiusM.toFixed(2)} m ({LOCK_FROM[lock.from]}).
    </p>
  );
}

function Still({ of, box, pxPerM }: { of: Shown; box: Box; pxPerM: number }) {
  const { units } = settings.value;
  const sum = of.decision?.sum;
  return (
    <figure>
      <figcaption>
        <b>
          <bdi>{clip(of.card.name, 60)}</bdi>
        </b>
        {sum && (
          <>
            : gap {shortText(sum.gapM, 'down', units)} − swing {shortText(sum.swingM, 'up', units)} ={' '}
            <b>
              {shortText(Math.abs(sum.spareM), sum.spareM < 0 ? 'up' : 'down', units)}{' '}
              {sum.spareM < 0 ? 'over' : 'spare'}
            </b>
          </>
        )}
        . {contactSentence(of.contact)}
      </figcaption>
      <FanDrawing scene={of.scene} {...box} pxPerM={pxPerM} tone={toneOf(of)} />
    </figure>
  );
}
