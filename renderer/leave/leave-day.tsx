import './leave.css';
import { sayDate } from '../../geo/clock/print-dates.ts';
import { clockOfLeave, minuteOfLeave, spanHolding, timesByVerdict } from '../../geo/leave/say-leave.ts';
import { LEVEL_WORD } from '../../geo/report/level.ts';
import type { LeaveVerdict } from '../../geo/report/report.ts';
import { lowerFirst } from '../../geo/units/text.ts';
import { chooseLeaveAt } from '../actions/choose.ts';
import { VerdictMark } from '../look/level-mark.tsx';
import { leaveAt, report } from '../state/check.ts';

/** A thumb's step: who leaves does not leave to the minute. */
const STEP_MIN = 5;
const LAST_MIN = 1440 - STEP_MIN;

/** The verdict at every leave time of the chosen day, and a slider along it; without a leave time, that none is set. */
export function LeaveDay() {
  const chosen = leaveAt.value;
  const times = report.value?.leaveTimes;
  if (chosen === undefined || report.value === undefined) return null;
  const date = chosen.slice(0, 10);
  // until the new day is checked the old one's band would be a lie
  const known = times?.[0]?.from.startsWith(date) === true ? times : [];
  return (
    <div class="leave-day">
      <LeaveSlider chosen={chosen} times={known} />
      <Legend times={known} />
    </div>
  );
}

function LeaveSlider({ chosen, times }: { chosen: string; times: readonly LeaveVerdict[] }) {
  const date = chosen.slice(0, 10);
  const now = spanHolding(times, chosen);
  const isSame = timesByVerdict(times).length === 1;
  const verdict = now && lowerFirst(LEVEL_WORD[now.verdict]);
  return (
    <div class="leave-slider">
      <label for="leave-slider" class="small">
        Leave <b>{clockOfLeave(chosen)}</b>, {sayDate(date)}
        {verdict === undefined ? ': working it out…' : `: ${verdict}`}
        {isSame && ', as at every hour of that day'}
      </label>
      <div class="leave-track">
        <Band times={times} />
        <input
          id="leave-slider"
          type="range"
          min={0}
          max={LAST_MIN}
          step={STEP_MIN}
          value={minuteOfLeave(chosen)}
          aria-valuetext={`${clockOfLeave(chosen)}${verdict === undefined ? '' : `, ${verdict}`}`}
          {...(isSame ? {} : { 'aria-describedby': 'leave-legend' })}
          onInput={({ currentTarget }) => chooseLeaveAt(`${date}T${clockAt(Number(currentTarget.value))}`)}
        />
      </div>
      <div class="leave-hours mono" aria-hidden="true">
        {[0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) => (
          <span key={hour} style={{ left: `${(hour / 24) * 100}%` }}>
            {hour}
          </span>
        ))}
      </div>
    </div>
  );
}

function Band({ times }: { times: readonly LeaveVerdict[] }) {
  return (
    <div class="leave-band" aria-hidden="true">
      {times.map(({ from, to, verdict }) => {
        const [start, end] = [minuteOfLeave(from), minuteOfLeave(to)];
        return (
          <span
            key={from}
            class={`leave-part leave-${verdict}`}
            style={{ left: `${start / 14.4}%`, width: `${(end - start) / 14.4}%` }}
          />
        );
      })}
    </div>
  );
}

/** The parts of the day in words, the best first; nothing where there is but one. */
function Legend({ times }: { times: readonly LeaveVerdict[] }) {
  const parts = timesByVerdict(times);
  if (parts.length < 2) return null;
  return (
    <ul id="leave-legend" class="leave-legend small">
      {parts.map(({ verdict, when }) => (
        <li key={verdict} class={`level-${verdict}`}>
          <VerdictMark verdict={verdict} size={15} />
          <span>
            {LEVEL_WORD[verdict]} <span class="soft">{when}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}

function clockAt(minute: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}
