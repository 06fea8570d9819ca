import type { Finding } from '../../geo/report/report.ts';
import { ask } from '../host/ask.ts';
import { keptNotes, noting } from '../state/notes.ts';
import { dialog } from '../state/page.ts';
import { shownPart } from '../state/parts.ts';

/** Learns what notes there are. */
export async function lookAtNotes(): Promise<void> {
  const reply = await ask('notes', {});
  if (reply.ok) keptNotes.value = reply.value.notes;
}

/** Writes a note on the place of a finding, or changes the one that made it. */
export function noteFinding(finding: Finding): void {
  void begin(({ draftOfFinding }) => draftOfFinding(finding));
}

/** Writes a note on a place of the map. */
export function noteAt(at: { readonly lat: number; readonly lon: number }): void {
  noting.value = false;
  void begin(({ draftAt }) => draftAt(at));
}

/** Shows a note that is kept, to be changed. */
export function changeNote(id: string): void {
  void begin(({ draftOfKept }) => draftOfKept(id));
}

/** Asks for a place on the map. */
export function placeOnMap(): void {
  dialog.value = undefined;
  noting.value = true;
  shownPart.value = 'map';
}

/** What makes drafts is loaded when it is first needed. */
async function begin(draft: (made: typeof import('./draft.ts')) => void): Promise<void> {
  draft(await import('./draft.ts'));
  dialog.value = 'note';
}
