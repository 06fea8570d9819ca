import { STOPS_MOST } from '../../geo/day/bounds.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip } from '../../geo/units/text.ts';
import { report } from '../state/check.ts';
import { dayPlan } from '../state/day.ts';
import { settings } from '../state/kept.ts';
import { cursorM } from '../state/shown.ts';
import { addStop, placeAtCursor } from './change-day.ts';

/** What a stop is long that nobody has timed yet. Minutes. */
const FIRST_STAY_MIN = 30;

/** A stop where the cursor is: map, strip and rows move it. */
export function AddStop() {
  const full = dayPlan.value.stops.length >= STOPS_MOST;
  const { units } = settings.value;
  const road = roadAt(cursorM.value);
  const where = `${distanceIn(units, cursorM.value)}${road === undefined ? '' : `, ${clip(road, 40)}`}`;
  return (
    <p class="day-add">
      <button
        type="button"
        disabled={full}
        onClick={() => {
          const place = placeAtCursor();
          if (!place) return;
          const name = road === undefined ? `Stop at ${distanceIn(units, place.atM)}` : `Stop on ${road}`;
          addStop({ ...place, name: name.slice(0, 200), stayMin: FIRST_STAY_MIN });
        }}
      >
        Add a stop at {where}
      </button>{' '}
      <span class="small soft">Click the drive on the map or the strip to choose where.</span>
    </p>
  );
}

function roadAt(m: number): string | undefined {
  const road = report.value?.roads.find(({ fromM, toM }) => m >= fromM && m <= toM);
  return road?.name ?? road?.ref;
}
