import { useMemo } from 'preact/hooks';
import { levelByHand, swingingEnd } from '../../geo/swing/lessons/read/judge.ts';
import { LEARN, titleOf } from '../../geo/swing/lessons/tell/names.ts';
import { sayByHand, sayNearest } from '../../geo/swing/lessons/tell/say-contact.ts';
import { tellScene } from '../../geo/swing/lessons/tell/tell-scene.ts';
import { SWING_CAUTION, sayModel } from '../../geo/swing/say-model.ts';
import { shortIn } from '../../geo/units/in-units.ts';
import { settings } from '../state/kept.ts';
import { LessonSettingsForm } from './controls/lesson-settings.tsx';
import { TurnOfDrive } from './controls/turn-of-drive.tsx';
import { Decides } from './decides.tsx';
import { KeyList } from './key-list.tsx';
import { byHand, reading, type Shown, shown, shownBeside } from './state/shown.ts';

/** What decides, what can be tried, and the same in words. */
export function SwingPanel() {
  const main = shown.value;
  if (!main) return null;
  const { scene } = main;
  const beside = shownBeside.value;
  return (
    <section class="swing-panel" aria-label="The lesson">
      <div class="swing-head">
        <h2>{titleOf(scene)}</h2>
        {!byHand.value && (
          <button type="button" onClick={() => window.print()}>
            Print
          </button>
        )}
      </div>
      {scene.lesson === 'drive-turn' && <TurnOfDrive />}
      <p class="swing-learn">{LEARN[scene.lesson]}</p>
      {byHand.value ? <ByHandNow /> : <Decides of={main} named={beside !== undefined} />}
      <KeyList scene={scene} />
      {beside && (
        <>
          <Decides of={beside} named />
          <KeyList scene={beside.scene} />
        </>
      )}
      <p class="caution">{sayModel(scene.vehicle.lock, settings.value.units)}</p>
      {!byHand.value && <LessonSettingsForm />}
      {!byHand.value && <InWords of={main} beside={beside} />}
      <p class="caution">{SWING_CAUTION}</p>
    </section>
  );
}

/** Steering by hand, the figures of the moment. */
function ByHandNow() {
  const { units } = settings.value;
  const now = reading.value;
  if (!now) return null;
  return (
    <div class="sum swing-sum">
      <p class={`decides level-${levelByHand(now)}`}>
        <span class="decides-number">{shortIn(units, now.swingM, 'up')}</span>{' '}
        {shown.value && swingingEnd(shown.value.scene)} swing now
      </p>
      <p class="sum-line">
        at most so far <b>{shortIn(units, now.swingMostM, 'up')}</b>
        {now.nearest && (
          <>
            ; nearest: {sayNearest(now)}, <b>{shortIn(units, Math.max(0, now.nearestM), 'down')}</b>
          </>
        )}
      </p>
      <p class="swing-contact">{sayByHand(now)}</p>
    </div>
  );
}

/** The drawing in words: what a screen reader has of it, and what is worth saying aloud. */
function InWords({ of, beside }: { of: Shown; beside: Shown | undefined }) {
  return (
    <section class="swing-words" aria-label="In words">
      <h3>In words</h3>
      <Told of={of} />
      {beside && <Told of={beside} />}
    </section>
  );
}

function Told({ of: { scene } }: { of: Shown }) {
  const { units } = settings.value;
  const sentences = useMemo(() => tellScene(scene, units), [scene, units]);
  return (
    <>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </>
  );
}
