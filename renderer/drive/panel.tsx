import { beginPlan, reopenPlan } from '../actions/begin-plan.ts';
import { openSample } from '../actions/open.ts';
import { later } from '../look/later.tsx';
import { report } from '../state/check.ts';
import { work } from '../state/happening.ts';
import { description, vehicle } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { plan, planFails } from '../state/plan.ts';
import { StripMap } from '../strip/strip-map.tsx';
import { NoVehicle } from '../vehicle/no-vehicle.tsx';
import { Filters } from './filters.tsx';
import { Notes } from './notes.tsx';
import { Rows } from './rows.tsx';
import { tellLevel } from './rows-level.ts';
import { VerdictBlock } from './verdict.tsx';

const PlanPanel = later(async () => (await import('../dialogs/loaded-later.ts')).PlanPanel);

/** Verdict, filters, and the strip with a row per finding beside it. */
export function Panel() {
  const planning = plan.value !== undefined;
  /** a plan that has come to no drive yet */
  const empty = planning && !openedDrive.value;
  const nothing = !planning && !openedDrive.value && !work.value && description.value !== undefined;
  return (
    <section class="panel" id="findings" tabIndex={-1} aria-label="Findings">
      {nothing ? (
        <NoDrive />
      ) : vehicle.value === undefined && description.value ? (
        <NoVehicle why="A drive is held against one vehicle’s sizes and plates." />
      ) : (
        <>
          <div>
            {planning && <PlanPanel />}
            {!empty && (planFails.value ? <PlanUnfinished /> : <VerdictBlock />)}
          </div>
          {!empty && !planFails.value && <Findings />}
        </>
      )}
    </section>
  );
}

/** What is drawn is not what was planned: no verdict stands beside it, and nothing of it is handed over. */
function PlanUnfinished() {
  return (
    <section class="verdict" aria-label="Verdict">
      <h2 class="verdict-word">Not finished</h2>
      <p>The plan does not reach its last place: no verdict, nothing to hand over or to save.</p>
      {!plan.value && (
        <button type="button" onClick={reopenPlan}>
          Change its places
        </button>
      )}
    </section>
  );
}

/** Filters, and the strip with the rows beside it. */
function Findings() {
  return (
    <>
      <Filters />
      <div class="strip-and-rows">
        <div class="strip-place">{openedDrive.value && <StripMap />}</div>
        <div class="rows-place" onScroll={({ currentTarget }) => tellLevel(currentTarget)}>
          {report.value && <Rows />}
          {report.value && <Notes />}
        </div>
      </div>
    </>
  );
}

function NoDrive() {
  const sample = description.value?.sample;
  return (
    <div class="empty">
      <h2>No drive is open</h2>
      <p>
        Open a GPX file of the planned drive: a track or a route, from a planner or a receiver. It is followed
        along the roads of the open map and held against the vehicle chosen above.
      </p>
      <p>
        <button
          type="button"
          class="chief"
          onClick={() => {
            dialog.value = 'open';
          }}
        >
          Open a drive…
        </button>{' '}
        <button type="button" onClick={beginPlan}>
          Plan a drive
        </button>{' '}
        {sample && (
          <button type="button" onClick={() => openSample(sample.defaultDrive)}>
            Show the sample drive
          </button>
        )}
      </p>
    </div>
  );
}
