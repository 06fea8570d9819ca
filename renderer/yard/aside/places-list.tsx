import { useState } from 'preact/hooks';
import type { Subject } from '../../../geo/report/kinds.ts';
import { SUBJECT_WORD, subjectsOf } from '../../../geo/report/subject-word.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import { sayLimit } from '../../../geo/yard/say-limit.ts';
import { whatStopsMost } from '../../../geo/yard/stops-most.ts';
import { settings } from '../../state/kept.ts';
import { arrangement, cellsTold, rows, stoppedListOf } from '../state/yard.ts';

const MOST_SHOWN = 40;

/** The places that stop most of what is shown: one of them chosen shows the drives it is on. */
export function PlacesList() {
  void cellsTold.value;
  const asked = arrangement.value;
  const cells = rows.value.flatMap(({ id }) =>
    asked.vehicle === undefined
      ? stoppedListOf(id)
      : stoppedListOf(id).filter(({ vehicle }) => vehicle === asked.vehicle),
  );
  const [subject, setSubject] = useState<Subject>();
  const all = whatStopsMost(cells);
  const subjects = subjectsOf(all.map(({ place }) => place));
  const only = subject !== undefined && subjects.includes(subject) ? subject : undefined;
  const places = all.filter(({ place }) => only === undefined || place.subject === only).slice(0, MOST_SHOWN);
  return (
    <>
      <p class="small soft">Places that bar a vehicle, of the drives and vehicles shown.</p>
      {subjects.length > 1 && (
        <label class="yard-of">
          <span class="small soft">Of</span>
          <select
            value={only ?? ''}
            onChange={({ currentTarget }) =>
              setSubject(subjects.find((each) => each === currentTarget.value))
            }
          >
            <option value="">every kind</option>
            {subjects.map((each) => (
              <option key={each} value={each}>
                {SUBJECT_WORD[each].toLowerCase()}
              </option>
            ))}
          </select>
        </label>
      )}
      {places.length === 0 && <p>Nothing bars any of them.</p>}
      <ol class="yard-list">
        {places.map(({ place, cells: count, drives, vehicles }) => {
          const chosen = asked.stoppedAt === place.key;
          return (
            <li key={place.key}>
              <span>
                <b>
                  {SUBJECT_WORD[place.subject]}
                  {place.limit && `, ${sayLimit(place.limit, settings.value.units)}`}
                </b>
                <br />
                <bdi>{place.road === undefined ? sayAt(place.at) : clip(place.road, 80)}</bdi>
                <br />
                <span class="small soft">
                  stops {counted(count, 'pair')}: {counted(drives.length, 'drive')},{' '}
                  {counted(vehicles.length, 'vehicle')}
                </span>
              </span>
              <button
                type="button"
                aria-pressed={chosen}
                onClick={() => {
                  arrangement.value = { ...asked, stoppedAt: chosen ? undefined : place.key };
                }}
              >
                {chosen ? 'Show all' : 'Its drives'}
              </button>
            </li>
          );
        })}
      </ol>
    </>
  );
}

function sayAt({ lat, lon }: { readonly lat: number; readonly lon: number }): string {
  return `at ${lat.toFixed(5)}, ${lon.toFixed(5)}`;
}
