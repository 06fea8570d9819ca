import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import { ask } from '../host/ask.ts';
import { leaveAt } from '../state/check.ts';
import { openedDrive } from '../state/opened.ts';

/** Dragging along the day should not write at every minute. */
const SETTLE_MS = 400;

/** Keeps the leave time with the drive it is chosen for, whenever it is chosen. @returns the way to end it */
export function keepLeaveTimes(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let kept: { readonly driveId: string; readonly leaveAt: string | undefined } | undefined;
  return effect(() => {
    const driveId = openedDrive.value?.followed.driveId;
    const chosen = leaveAt.value;
    clearTimeout(timer);
    if (driveId === undefined) return;
    const before = kept?.driveId === driveId ? kept.leaveAt : openedDrive.peek()?.followed.leaveAt;
    if (chosen === before) return;
    timer = setTimeout(() => {
      kept = { driveId, leaveAt: chosen };
      // a time that could not be kept costs the next start its memory, nothing else
      void ask('keepLeaveAt', { driveId, ...given({ leaveAt: chosen }) });
    }, SETTLE_MS);
  });
}
