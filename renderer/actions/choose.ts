import { LEAVE_AT } from '../../main/contract/leave-at.ts';
import { findings, leaveAt } from '../state/check.ts';
import { settings, vehicleId } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { cursorM, selectedId, showEveryFinding, shownFindings } from '../state/shown.ts';
import { saveSettings } from './keep.ts';
import { openWanted } from './open.ts';

/** Another track or route of the same file. @param track 1-based place in the list */
export function chooseTrack(track: number): Promise<void> {
  const drive = openedDrive.peek();
  return drive ? openWanted({ drive: { source: drive.source, track } }) : Promise.resolve();
}

export function chooseVehicle(id: string): void {
  vehicleId.value = id;
  void saveSettings({ ...settings.peek(), vehicleId: id });
}

/** The years a leave time may lie in. */
export const LEAVE_YEARS = { from: 1990, to: 2100 };

/** @param text as the field gives it; what is no time of this age counts as none */
export function chooseLeaveAt(text: string): void {
  const year = Number(text.slice(0, 4));
  const usable = LEAVE_AT.test(text) && year >= LEAVE_YEARS.from && year <= LEAVE_YEARS.to;
  leaveAt.value = usable ? text : undefined;
}

/** Opens a finding, and puts the cursor there; undefined closes it. */
export function select(id: string | undefined): void {
  selectedId.value = id;
  const found = findings.peek().find((finding) => finding.id === id);
  if (found) cursorM.value = found.fromM;
}

/** Opens a finding from outside the list, whatever the filters hide. */
export function goTo(id: string): void {
  if (!shownFindings.peek().some((finding) => finding.id === id)) showEveryFinding();
  select(id);
}
