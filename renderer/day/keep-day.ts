import { useEffect } from 'preact/hooks';
import { ask } from '../host/ask.ts';
import { dayPlans } from '../state/day.ts';
import { openedDrive } from '../state/opened.ts';

/** Typing should not write at every stroke. */
const SETTLE_MS = 400;

/** Keeps the day with the drive it is planned for, whenever it is changed. */
export function useDayKept(): void {
  const driveId = openedDrive.value?.followed.driveId;
  const day = driveId === undefined ? undefined : dayPlans.value[driveId];
  useEffect(() => {
    if (driveId === undefined || day === undefined) return undefined;
    // a day that could not be kept costs the next start its memory, nothing else
    const timer = setTimeout(() => void ask('keepDay', { driveId, day }), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [driveId, day]);
}
