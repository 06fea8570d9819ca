import { ask } from '../host/ask.ts';
import { changedFrom, isMadeHere, undone } from '../state/changed.ts';
import { openedDrive } from '../state/opened.ts';
import { laidOut, placing, plan } from '../state/plan.ts';
import { leaveListed } from './keep-left.ts';

/** Another drive comes: one that was changed or planned here stays among those opened before. */
export function leaveChanges(): void {
  const left = openedDrive.peek();
  if (left && isMadeHere.peek()) void ask('rememberDrives', { sources: [left.source] });
  leaveListed();
  changedFrom.value = [];
  undone.value = [];
  plan.value = undefined;
  laidOut.value = undefined;
  placing.value = false;
}
