import { useMemo } from 'preact/hooks';
import { MODEL, tellScene } from '../../geo/swing/lessons/tell-scene.ts';
import { clip } from '../drive/words.ts';
import { settings } from '../state/kept.ts';
import { LessonSettingsForm } from './controls/settings.tsx';
import { TurnOfDrive } from './controls/turn-of-drive.tsx';
import { contactSentence, type Decision, overSentence } from './decides.ts';
import { byHand, lesson, reading, type Shown, shown, shownBeside, touchedByHand } from './state.ts';
import { shortText } from './words.ts';

const STANDING_CAUTION =
  'Signs and the road decide. This is an aid for teaching and planning, not a permit. Have somebody watch the tail.';

/** What decides, what can be tried, and the same in words. */
export function SwingPanel() {
  const main = shown.value;
  if (!main) return null;
  const beside = shownBeside.value;
  return (
    <section class="swing-panel" aria-label="The lesson">
      <div class="swing-head">
        <h2>{main.scene.title}</h2>
        {!byHand.value && (
          <button type="button" onClick={() => window.print()}>
            Print
          </button>
        )}
      </div>
      {lesson.value === 'drive-turn' && <TurnOfDrive />}
      <p class="swing-learn">{main.scene.learn}</p>
      {byHand.value ? <ByHandNow /> : <Decides of={main} named={beside !== undefined} />}
      {beside && <Decides of={beside} named />}
      <p class="caution">{MODEL}</p>
      <LessonSettingsForm />
      {!byHand.value && <InWords of={main} />}
      <p class="caution">{STANDING_CAUTION}</p>
    </section>
  );
}

/** The number that decides, and the sum it comes from. */
function Decides({ of, named }: { of: Shown; named: boolean }) {
  const { decision } = of;
  if (!decision) return null;
  return (
    <div class="sum swing-sum">
      {named && (
        <p class="small">
          <bdi>{clip(of.card.name, 60)}</bdi>
        </p>
      )}
      {decision.sum ? <GapSum of={of} decision={decision} /> : <Nearest of={of} decision={decision} />}
      <p class="swing-contact">
        {overSentence(decision)} {contactSentence(of.contact)}
      </p>
    </div>
  );
}

interface Decided {
  readonly of: Shown;
  readonly decision: Decision;
}

/** gap − swing = spare. */
function GapSum({ of, decision: { sum, level } }: Decided) {
  const { units } = settings.value;
  if (!sum) return null;
  const over = sum.spareM < 0;
  return (
    <>
      <p class={`decides level-${level}`}>
        <span class="decides-number">{shortText(Math.abs(sum.spareM), over ? 'up' : 'down', units)}</span>{' '}
        {over ? 'over' : 'spare'}
      </p>
      <p class="sum-line">
        <span>
          gap <b>{shortText(sum.gapM, 'down', units)}</b>
        </span>{' '}
        −{' '}
        <span>
          {of.scene.reversing ? 'nose' : 'tail'} swing <b>{shortText(sum.swingM, 'up', units)}</b>
        </span>{' '}
        ={' '}
        <span>
          <b>{shortText(sum.spareM, 'down', units)}</b>
        </span>
      </p>
    </>
  );
}

/** Where no one gap decides: the line passed farthest, else the least room of the whole way, and the most swing. */
function Nearest({ of, decision }: Decided) {
  const { units } = settings.value;
  const { least, over, mostSwingM, level } = decision;
  const end = of.scene.reversing ? 'nose' : 'tail';
  const most = <b>{shortText(mostSwingM, 'up', units)}</b>;
  // how far a way leads into what it touches says little: a wheel on a kerb is never in deeper than its tyre
  if (of.contact)
    return (
      <>
        <p class={`decides level-${level}`}>
          <span class="decides-number">touches</span> {of.contact.fixture}
        </p>
        <p class="sum-line">
          {end} swing at most {most}
        </p>
      </>
    );
  if (!over && !least)
    return (
      <p class={`decides level-${level}`}>
        <span class="decides-number">{shortText(mostSwingM, 'up', units)}</span> {end} swing
      </p>
    );
  return (
    <>
      <p class={`decides level-${level}`}>
        <span class="decides-number">
          {over ? shortText(over.overM, 'up', units) : shortText(least?.gapM ?? 0, 'down', units)}
        </span>{' '}
        {over ? `over ${over.fixture.name}` : `spare to ${least?.near.fixture.name}`}
      </p>
      <p class="sum-line">
        {end} swing at most {most}
        {over && least && (
          <>
            ; <b>{shortText(least.gapM, 'down', units)}</b> spare to {least.near.fixture.name}
          </>
        )}
      </p>
    </>
  );
}

/** Steering by hand, the figures of the moment. */
function ByHandNow() {
  const { units } = settings.value;
  const now = reading.value;
  if (!now) return null;
  const touched = touchedByHand.value;
  return (
    <div class="sum swing-sum">
      <p class={`decides level-${touched ? 'barred' : 'care'}`}>
        <span class="decides-number">{shortText(now.swingM, 'up', units)}</span>{' '}
        {shown.value?.scene.reversing ? 'nose' : 'tail'} swing now
      </p>
      <p class="sum-line">
        at most so far <b>{shortText(now.swingMostM, 'up', units)}</b>
        {now.nearestTo !== undefined && (
          <>
            ; nearest: {now.nearestTo}, <b>{shortText(Math.max(0, now.nearestM), 'down', units)}</b>
          </>
        )}
      </p>
      <p class="swing-contact">
        {touched
          ? `It touches ${now.nearestTo ?? 'what stands there'}. Roll the other way to come off it.`
          : 'Nothing is touched.'}
      </p>
    </div>
  );
}

/** The drawing in words: what a screen reader has of it, and what is worth saying aloud. */
function InWords({ of }: { of: Shown }) {
  // the model's caution stands by the figure
  const sentences = useMemo(() => tellScene(of.scene).filter((each) => each !== MODEL), [of.scene]);
  return (
    <section class="swing-words" aria-label="In words">
      <h3>In words</h3>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </section>
  );
}
