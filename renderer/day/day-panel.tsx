import './day.css';
import { clockText, durationText } from '../../geo/clock/print-times.ts';
import { howLate, sayLate } from '../../geo/day/say-day.ts';
import type { Day } from '../../geo/report/day.ts';
import { DO_SERVICE, SERVICE_KINDS } from '../../geo/services/kinds.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { select } from '../actions/choose.ts';
import { leaveAt, report } from '../state/check.ts';
import { dayPlan } from '../state/day.ts';
import { settings } from '../state/kept.ts';
import { cursorM } from '../state/shown.ts';
import { AddStop } from './add-stop.tsx';
import { setBefore, setHomeBy } from './change-day.ts';
import { useDayKept } from './keep-day.ts';
import { ServicesOnWay } from './services-on-way.tsx';
import { StopList } from './stop-list.tsx';

/** The day on the drive: return hour, stops with the latest leaving of each, what falls due, places for the tanks. */
export function DayPanel() {
  useDayKept();
  const day = report.value?.day;
  return (
    <section class="day" aria-labelledby="day-head">
      <h3 id="day-head">The day</h3>
      <HomeBy />
      {day && <Ends day={day} />}
      <StopList />
      <AddStop />
      {day && <Advice day={day} />}
      <Before />
      <ServicesOnWay />
      {day && <Due day={day} />}
    </section>
  );
}

function HomeBy() {
  const { homeBy } = dayPlan.value;
  const date = leaveAt.value?.slice(0, 10);
  return (
    <div class="day-home">
      <label for="home-by">Due back (at the end of the drive) by</label>
      <input
        id="home-by"
        type="datetime-local"
        value={homeBy ?? ''}
        onInput={({ currentTarget }) => setHomeBy(currentTarget.value)}
      />
      {homeBy === undefined && date !== undefined && (
        <button type="button" class="small" onClick={() => setHomeBy(`${date}T17:00`)}>
          That day at 17:00
        </button>
      )}
    </div>
  );
}

/** From the start and at the end, with what is kept back. */
function Ends({ day }: { day: Day }) {
  const { start, end, margin, notes } = day;
  const date = report.value?.leaveAt;
  const late = sayLate(day);
  const how = howLate(day);
  const kept = `${Math.round(margin.drivingShare * 100)} % of the driving and ${margin.perServiceS / 60} min for each stop with tanks`;
  return (
    <>
      {notes.map((note) => (
        <p
          key={note}
          class={late.includes(note) ? `day-note day-note-${how === 'short' ? how : 'late'}` : 'day-note'}
          role="status"
        >
          {note}
        </p>
      ))}
      {start.latestLeaveAt !== undefined && how !== 'before' && (
        <p>
          Set off by <b>{clockText(start.latestLeaveAt, date)}</b> at the latest
          {end.spareS !== undefined && end.spareS >= 0 && <>: {durationText(end.spareS)} to spare</>}.
        </p>
      )}
      {end.arriveAt !== undefined && (
        <p class="small soft">
          At the drive’s end at {clockText(end.arriveAt, date)} when all goes as told. Kept back in the latest
          times: {kept}, {durationText(start.marginOnS)} from the start.
        </p>
      )}
      {leaveAt.value === undefined && (
        <p class="small soft">Without a leave time nobody can say when you are where: set one above.</p>
      )}
    </>
  );
}

/** Breaks, and the cassette before a winding stretch. */
function Advice({ day: { advice } }: { day: Day }) {
  if (advice.length === 0) return null;
  const { units } = settings.value;
  return (
    <ul class="day-advice" aria-label="Advice on the way">
      {advice.map(({ atM, at, say, kind }) => (
        <li key={`${kind}${atM}`}>
          <button
            type="button"
            class="quiet small"
            onClick={() => {
              select(undefined);
              cursorM.value = atM;
            }}
          >
            {distanceIn(units, atM)}
            <span class="unseen"> along: show where</span>
          </button>
          <span class="small">
            {at !== undefined && <b>{clockText(at, report.value?.leaveAt)} </b>}
            {say}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** What has to be done before the yard: also what places are looked for. */
function Before() {
  const before = dayPlan.value.before ?? [];
  return (
    <fieldset class="day-before">
      <legend>To do before the yard</legend>
      {SERVICE_KINDS.map((kind) => (
        <label key={kind}>
          <input
            type="checkbox"
            checked={before.includes(kind)}
            onChange={({ currentTarget }) => setBefore(kind, currentTarget.checked)}
          />{' '}
          {DO_SERVICE[kind]}
        </label>
      ))}
    </fieldset>
  );
}

/** What falls due, by the minute. */
function Due({ day: { due } }: { day: Day }) {
  if (due.length === 0) return null;
  return (
    <div>
      <h4 id="day-due">What falls due</h4>
      <ol class="day-due" aria-labelledby="day-due">
        {due.map(({ say, by }) => (
          <li key={say} class={by === undefined ? 'day-open' : ''}>
            <bdi>{say}</bdi>
          </li>
        ))}
      </ol>
    </div>
  );
}
