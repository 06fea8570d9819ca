import { useEffect, useRef } from 'preact/hooks';
import { held, rollBy, startByHand, turnWheelTo, wheelShare } from '../state/hand.ts';
import { toStart } from '../state/lesson.ts';

/** One press by keyboard rolls this far. Metres. */
const PRESS_M = 0.25;

/** The wheel, and rolling on and back for as long as a button is held. */
export function HandControls() {
  const share = wheelShare.value;
  const text =
    Math.abs(share) < 0.005
      ? 'straight'
      : `${Math.round(Math.abs(share) * 100)} % ${share > 0 ? 'left' : 'right'}`;
  return (
    <>
      <Roll say="Forward" way={1} />
      <Roll say="Back" way={-1} />
      <div class="scrub">
        <input
          type="range"
          aria-label="Steering wheel"
          aria-valuetext={text}
          min={-1}
          max={1}
          step={0.05}
          value={-share}
          onInput={({ currentTarget }) => turnWheelTo(-Number(currentTarget.value))}
        />
        <span class="scrub-figure small" aria-hidden="true">
          {text}
        </span>
      </div>
      <button type="button" onClick={() => turnWheelTo(0)}>
        Straighten
      </button>
      <button type="button" onClick={startByHand}>
        Start again
      </button>
      <button type="button" onClick={backToLesson}>
        Back to the lesson
      </button>
    </>
  );
}

/** The keyboard goes back to where it came from. */
function backToLesson(): void {
  toStart();
  requestAnimationFrame(() => document.querySelector<HTMLElement>('.take-wheel')?.focus());
}

function Roll({ say, way }: { say: string; way: 1 | -1 }) {
  const button = useRef<HTMLButtonElement>(null);
  // the button that took the wheel is gone: the keyboard stands where one drives on
  useEffect(() => {
    if (way === 1) button.current?.focus();
  }, [way]);
  const letGo = () => {
    held.move = 0;
  };
  return (
    <button
      ref={button}
      type="button"
      class={way === 1 ? 'chief' : ''}
      onPointerDown={({ currentTarget, pointerId }) => {
        currentTarget.setPointerCapture(pointerId);
        held.move = way;
      }}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onLostPointerCapture={letGo}
      onClick={({ detail }) => {
        // by keyboard or a screen reader there is no pointer to hold
        if (detail === 0) rollBy(way * PRESS_M);
      }}
    >
      {say}
    </button>
  );
}
