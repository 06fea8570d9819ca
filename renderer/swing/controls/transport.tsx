import { sayWay } from '../../../geo/swing/lessons/tell/lengths.ts';
import { drawnUnits } from '../state/drawn-units.ts';
import { startByHand } from '../state/hand.ts';
import { playing, toStart, travelM } from '../state/lesson.ts';
import { lessMotion } from '../state/motion-wish.ts';
import { playOrPause, scrubBy } from '../state/play.ts';
import { byHand, contactM, wayM } from '../state/shown.ts';
import { HandControls } from './hand-controls.tsx';

/** Under the drawing: play and scrub, or the wheel in the user's hand. */
export function Transport() {
  return <div class="transport">{byHand.value ? <HandControls /> : <PlayControls />}</div>;
}

function PlayControls() {
  return (
    <>
      <button type="button" class="chief transport-play" onClick={playOrPause}>
        {playing.value ? 'Pause' : lessMotion.value ? 'Play in steps' : 'Play'}
      </button>
      <button type="button" onClick={toStart}>
        To the start
      </button>
      <Scrub />
      <button type="button" class="take-wheel" onClick={startByHand}>
        Steer by hand
      </button>
    </>
  );
}

/** A step of the slider by keyboard. Metres. */
const PRESS_M = 0.1;

/** The way rolled, with a mark where it touches. */
function Scrub() {
  const drawn = drawnUnits.value;
  const long = wayM.value;
  const touch = contactM.value;
  const at = Math.min(travelM.value, long);
  return (
    <div class="scrub">
      <div class="scrub-way">
        <input
          type="range"
          aria-label="Rolled so far"
          aria-valuetext={`${sayWay(drawn, at)} of ${sayWay(drawn, long)}`}
          min={0}
          max={long}
          step="any"
          value={at}
          onInput={({ currentTarget }) => {
            playing.value = false;
            travelM.value = Number(currentTarget.value);
          }}
          onKeyDown={(event) => {
            const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
            if (way === undefined) return;
            event.preventDefault();
            scrubBy(way * PRESS_M);
          }}
        />
        {touch !== undefined && long > 0 && (
          <svg class="scrub-touch" viewBox="0 0 1000 10" preserveAspectRatio="none" aria-hidden="true">
            <path d={`M${(touch / long) * 1000} 0V10`} />
          </svg>
        )}
      </div>
      <span class="scrub-figure small" aria-hidden="true">
        {sayWay(drawn, at).replace(/ \w+$/, '')} of {sayWay(drawn, long)}
      </span>
    </div>
  );
}
