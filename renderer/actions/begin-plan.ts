import { report } from '../state/check.ts';
import { work } from '../state/happening.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { shownPart } from '../state/parts.ts';
import { openPlan, placing, plan } from '../state/plan.ts';
import { cursorM, selectedId } from '../state/shown.ts';
import { showView } from '../state/views.ts';
import { leaveChanges } from './leave-changes.ts';

/** Begins a plan with nothing in it; the drive that is open comes back when it is closed without a drive of its own. */
export function beginPlan(): void {
  dialog.value = undefined;
  showView('drive');
  shownPart.value = 'list';
  if (plan.peek()) return;
  work.peek()?.stop();
  const before = openedDrive.peek();
  leaveChanges();
  openPlan(before);
  placing.value = true;
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
  cursorM.value = 0;
}

/** Ends planning: the drive it came to stays open like any other. */
export function closePlan(): void {
  const now = plan.peek();
  if (!now) return;
  plan.value = undefined;
  placing.value = false;
  if (!openedDrive.peek() && now.before) openedDrive.value = now.before;
}
