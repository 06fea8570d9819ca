import { clip, counted } from '../../geo/units/text.ts';
import type { KeptPlace } from '../../main/contract/settings.ts';
import { report } from '../state/check.ts';
import { tellAlso, work } from '../state/happening.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { shownPart } from '../state/parts.ts';
import { laidOut, leftPlan, openPlan, placing, plan } from '../state/plan.ts';
import { cursorM, selectedId } from '../state/shown.ts';
import { showView } from '../state/views.ts';
import { leaveChanges } from './leave-changes.ts';

/** Begins a plan with nothing in it; the drive that is open comes back when it is closed without a drive of its own. */
export function beginPlan(): void {
  begin([]);
}

/** @param places what the plan begins with */
function begin(places: readonly KeptPlace[]): void {
  dialog.value = undefined;
  showView('drive');
  shownPart.value = 'list';
  if (plan.peek()) return;
  work.peek()?.stop();
  const before = openedDrive.peek();
  leaveChanges();
  openPlan(before, places);
  placing.value = places.length === 0;
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
  cursorM.value = 0;
}

/** Offers to go on with the plan that the last window was closed over. */
export function offerLeftPlan(left: readonly KeptPlace[]): void {
  if (left.length === 0) return;
  leftPlan.value = left;
  const [from, to] = [left[0]?.name, left.length > 1 ? left.at(-1)?.name : undefined];
  const ends = from !== undefined && to !== undefined ? `, ${clip(from, 60)} to ${clip(to, 60)}` : '';
  tellAlso({
    kind: 'note',
    say: `A plan was open when the window was closed: ${counted(left.length, 'place')}${ends}.`,
    offers: [
      {
        say: 'Go on planning',
        act: () => {
          leftPlan.value = [];
          begin(left);
        },
      },
      {
        say: 'Forget the plan',
        act: () => {
          leftPlan.value = [];
        },
      },
    ],
  });
}

/** Ends planning: the drive it came to stays open like any other, and its places can be gone back to. */
export function closePlan(): void {
  const now = plan.peek();
  if (!now) return;
  const drive = openedDrive.peek();
  if (drive) laidOut.value = { driveId: drive.followed.driveId, plan: now };
  plan.value = undefined;
  placing.value = false;
  if (!drive && now.before) openedDrive.value = now.before;
}

/** Goes back to the places that the open drive was laid out by, with all their steps back and on. */
export function reopenPlan(): void {
  const drive = openedDrive.peek();
  if (drive === undefined || laidOut.peek()?.driveId !== drive.followed.driveId) return;
  dialog.value = undefined;
  plan.value = laidOut.peek()?.plan;
}
