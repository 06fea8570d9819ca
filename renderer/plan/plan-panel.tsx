import './plan.css';
import { useEffect, useRef } from 'preact/hooks';
import { clip, counted } from '../../geo/units/text.ts';
import { PLAN_PLACES_MAX } from '../../main/contract/limits.ts';
import { closePlan } from '../actions/begin-plan.ts';
import { saveAsGpx } from '../actions/take-way.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { shownPart } from '../state/parts.ts';
import { places, placing, plan, planFails, putPlace, redoPlaces, undoPlaces } from '../state/plan.ts';
import { PlaceField } from './place-field.tsx';
import { PlaceList } from './place-list.tsx';
import { PreferChoice } from './prefer-choice.tsx';
import { planAgain, replanOnChange } from './replan.ts';

/** A drive planned from nothing: its places, how to put more, and what came of it. */
export function PlanPanel() {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    head.current?.focus();
    return replanOnChange();
  }, []);
  const now = plan.value;
  if (!now) return null;
  return (
    <section class="plan" aria-labelledby="plan-head">
      <header class="plan-head">
        <h2 id="plan-head" ref={head} tabIndex={-1}>
          Plan a drive
        </h2>
        <button type="button" onClick={closePlan}>
          {openedDrive.value && !planFails.value ? 'Done' : 'Close'}
          <span class="unseen"> planning</span>
        </button>
      </header>
      <PlaceList />
      {places.value.length < PLAN_PLACES_MAX ? (
        <Putting />
      ) : (
        <p class="small">{PLAN_PLACES_MAX} places are as many as one drive may have.</p>
      )}
      <PreferChoice />
      <Acts />
      <Outcome />
    </section>
  );
}

function Putting() {
  return (
    <div class="plan-putting">
      <PlaceField
        id="plan-place"
        label="A place by name, or coordinates like 54.1, 9.2"
        put={(place) => putPlace({ ...place, stop: true })}
      />
      <button
        type="button"
        aria-pressed={placing.value}
        onClick={() => {
          placing.value = !placing.value;
          if (placing.value) shownPart.value = 'map';
        }}
      >
        Put on the map
      </button>
    </div>
  );
}

function Acts() {
  const { before, after } = plan.value?.places ?? { before: [], after: [] };
  return (
    <p class="plan-acts">
      <button type="button" disabled={before.length === 0} onClick={undoPlaces}>
        Undo
      </button>
      <button type="button" disabled={after.length === 0} onClick={redoPlaces}>
        Redo
      </button>
      <button type="button" disabled={!openedDrive.value || planFails.value} onClick={() => saveAsGpx()}>
        Save as GPX
      </button>
    </p>
  );
}

/** What came of the last change: a drive, nothing yet, or why there is none. */
function Outcome() {
  const { problem, say = [] } = plan.value ?? {};
  const count = places.value.length;
  return (
    <div role="status">
      {problem !== undefined && (
        <p class="problem">
          {clip(problem, 600)}
          {openedDrive.value &&
            ' What is drawn is the drive before that: it is not saved or handed over as this plan.'}{' '}
          <button type="button" onClick={planAgain}>
            Look again
          </button>
          {plan.value?.offMap && (
            <button
              type="button"
              onClick={() => {
                dialog.value = 'shelf';
              }}
            >
              Get a map…
            </button>
          )}
        </p>
      )}
      {problem === undefined && count < 2 && (
        <p class="soft">
          {count === 0 ? 'Put the place where the drive starts.' : 'Put the place where it is to end.'}
        </p>
      )}
      {say.map((each) => (
        <p key={each} class="small">
          {clip(each, 400)}
        </p>
      ))}
      {count >= 2 && problem === undefined && <p class="unseen">{counted(count, 'place')} in the plan.</p>}
    </div>
  );
}
