import { clockText } from '../../geo/clock/print-times.ts';
import { STAY_MOST_MIN } from '../../geo/day/bounds.ts';
import type { DayStop } from '../../geo/day/plan.ts';
import { sayOpen } from '../../geo/day/say-open.ts';
import type { StopTimes } from '../../geo/report/day.ts';
import { DO_SERVICE } from '../../geo/services/kinds.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip, listed, lowerFirst } from '../../geo/units/text.ts';
import { report } from '../state/check.ts';
import { dayPlan } from '../state/day.ts';
import { settings } from '../state/kept.ts';
import { cursorM } from '../state/shown.ts';
import { changeStop, removeStop } from './change-day.ts';

/** The stops in driving order, each with its stay and the latest leaving. */
export function StopList() {
  const { stops } = dayPlan.value;
  if (stops.length === 0) return null;
  const timed = report.value?.day?.stops ?? [];
  const items = stops.map((stop, at) => ({ stop, at, times: timed.find((one) => isSame(one, stop)) }));
  items.sort((a, b) => alongOf(a) - alongOf(b));
  return (
    <ol class="day-stops" aria-label="Stops, in the order they are met">
      {items.map(({ stop, at, times }) => (
        <Stop key={at} stop={stop} at={at} times={times} />
      ))}
    </ol>
  );
}

interface Item {
  readonly stop: DayStop;
  /** its place in the plan */
  readonly at: number;
  /** as the drive meets it; nothing where it does not, or is not checked yet */
  readonly times: StopTimes | undefined;
}

const isSame = (one: StopTimes, stop: DayStop): boolean =>
  one.lat === stop.lat &&
  one.lon === stop.lon &&
  one.name === stop.name &&
  Math.abs(one.atM - (stop.atM ?? one.atM)) < SAME_PASS_M;
/** Farther apart are two passes by one place. Metres. */
const SAME_PASS_M = 2_000;

const alongOf = ({ stop, times }: Item): number => times?.atM ?? stop.atM ?? 0;

function Stop({ stop, at, times }: Item) {
  const missed = report.value?.day?.missed.some(({ lat, lon }) => lat === stop.lat && lon === stop.lon);
  const which = <span class="unseen"> of {stop.name}</span>;
  return (
    <li class="day-stop">
      <span class="day-knot" aria-hidden="true" />
      <div class="day-stop-head">
        <input
          type="text"
          class="day-name"
          aria-label={`Name of stop ${stop.name}`}
          maxLength={200}
          value={stop.name}
          onChange={({ currentTarget }) => {
            const name = currentTarget.value.trim();
            if (name === '') currentTarget.value = stop.name;
            else changeStop(at, { name });
          }}
        />
        <label class="small day-stay">
          stay{which}{' '}
          <input
            type="number"
            min={0}
            max={STAY_MOST_MIN}
            step={5}
            value={stop.stayMin}
            onChange={({ currentTarget }) => {
              const stayMin = Math.round(currentTarget.valueAsNumber);
              if (stayMin >= 0 && stayMin <= STAY_MOST_MIN) changeStop(at, { stayMin });
              else currentTarget.value = String(stop.stayMin);
            }}
          />{' '}
          min
        </label>
        <button type="button" onClick={() => removeStop(at)}>
          Remove<span class="unseen"> stop {stop.name}</span>
        </button>
      </div>
      {missed && (
        <p class="small problem-inline">
          The drive does not pass it: it is not counted. Remove it, or put it in again.
        </p>
      )}
      {times && <Times times={times} />}
    </li>
  );
}

function Times({ times }: { times: StopTimes }) {
  const { atM, arriveAt, leaveAt, latestLeaveAt, services, open } = times;
  const isOpen = sayOpen(times);
  const date = report.value?.leaveAt;
  const late =
    latestLeaveAt !== undefined && leaveAt !== undefined && Date.parse(leaveAt) > Date.parse(latestLeaveAt);
  return (
    <p class="small day-times">
      <button
        type="button"
        class="quiet small"
        onClick={() => {
          cursorM.value = atM;
        }}
      >
        {distanceIn(settings.value.units, atM)}
        <span class="unseen"> along: show where</span>
      </button>
      {arriveAt !== undefined && leaveAt !== undefined && (
        <span>
          there <b>{clockText(arriveAt, date)}</b>, on at <b>{clockText(leaveAt, date)}</b>
        </span>
      )}
      {latestLeaveAt !== undefined && (
        <span class={late ? 'day-late' : ''}>
          leave by <b>{clockText(latestLeaveAt, date)}</b>
          {late ? ', which is too late as planned' : ' at the latest'}
        </span>
      )}
      {services.length > 0 && <span>{listed(services.map((kind) => lowerFirst(DO_SERVICE[kind])))}</span>}
      {isOpen !== undefined && <span class={`day-${open?.is ?? 'unknown'}`}>{clip(isOpen, 200)}</span>}
    </p>
  );
}
