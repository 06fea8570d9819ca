import { weekdayOfDate } from '../../geo/clock/print-dates.ts';
import { chooseLeaveAt, LEAVE_YEARS } from '../actions/choose.ts';
import { leaveAt, report } from '../state/check.ts';

/** The leave time, with the day of the week it falls on, or what is left out without one. */
export function LeaveChoice() {
  const chosen = leaveAt.value;
  const checked = report.value;
  const isPast = checked?.leaveAt === chosen && checked?.timetable?.past;
  return (
    <div class="choice">
      <span class="leave-label">
        <label class="small soft" for="leave">
          Leave
        </label>
        <span id="leave-says" class={chosen === undefined || isPast ? 'leave-none' : 'soft'}>
          {chosen === undefined
            ? 'No leave time: hours not judged'
            : `${weekdayOfDate(chosen)}${isPast ? ': this leave time is past' : ''}`}
        </span>
      </span>
      <input
        id="leave"
        type="datetime-local"
        aria-describedby="leave-says"
        min={`${LEAVE_YEARS.from}-01-01T00:00`}
        max={`${LEAVE_YEARS.to}-12-31T23:59`}
        value={chosen ?? ''}
        onInput={({ currentTarget }) => chooseLeaveAt(currentTarget.value)}
      />
    </div>
  );
}
