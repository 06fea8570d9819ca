import { later } from '../look/later.tsx';
import { dayForCheck, dayShown } from '../state/day.ts';

const DayPanel = later(async () => (await import('./day-panel.tsx')).DayPanel);

/** Under the leave time: the day's stops and the return hour, once asked for. */
export function DayPart() {
  if (dayForCheck.value !== undefined) return <DayPanel />;
  return (
    <p>
      <button
        type="button"
        onClick={() => {
          dayShown.value = true;
        }}
      >
        Plan the day: stops, return hour, tanks
      </button>
    </p>
  );
}
