import type { RequestOf } from '../../main/contract/calls.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { Source } from '../../main/contract/source.ts';
import { addFile, ask } from '../host/ask.ts';
import { downloadFile } from '../host/download.ts';
import { changedFrom, madeHere, undone } from '../state/changed.ts';
import { report } from '../state/check.ts';
import { carryDay } from '../state/day.ts';
import { notice } from '../state/happening.ts';
import { type OpenedDrive, openedDrive } from '../state/opened.ts';
import { laidOut, plan, savedPlan } from '../state/plan.ts';
import { cursorM, selectedId } from '../state/shown.ts';
import { waysFound } from '../state/ways.ts';
import { type Job, runLong } from './long-work.ts';

/**
 * Puts ways into the drive in place of its own stretches.
 * @param which by their places among the ways found
 * @param say what the change does
 */
export async function takeWays(which: readonly number[], say: string): Promise<void> {
  await takeInto(
    which.map((at) => waysFound.peek()[at]).filter((way) => way !== undefined),
    say,
  );
}

/** A way in place of a stretch of the drive. */
type WayTaken = Pick<RequestOf<'takeWay'>, 'fromM' | 'toM' | 'path'>;

/**
 * Puts ways into the drive in place of its own stretches, so that it can be taken back.
 * @param taken told the changed drive before it is shown
 */
export async function takeInto(
  ways: readonly WayTaken[],
  say: string,
  taken?: (made: OpenedDrive) => void,
): Promise<void> {
  const before = openedDrive.peek();
  const chosen = [...ways];
  if (!before || chosen.length === 0) return;
  // from the far end: what lies before a way that was put in keeps its metres
  chosen.sort((a, b) => b.fromM - a.fromM);
  let problem: string | undefined;
  const ended = await runLong('Putting the way into the drive', async (job) => {
    let { followed } = before;
    for (const { fromM, toM, path } of chosen) {
      const reply = await ask(
        'takeWay',
        { driveId: followed.driveId, fromM, toM, path },
        { signal: job.signal, onProgress: job.tell },
      );
      if (!reply.ok) {
        problem = reply.error.code === 'cancelled' ? undefined : reply.error.message;
        return;
      }
      followed = reply.value;
    }
    const made = await asFile(followed, before.source, job);
    if (job.signal.aborted) return;
    changedFrom.value = [...changedFrom.peek(), { drive: before, say }];
    undone.value = [];
    taken?.(made);
    showInstead(made);
  });
  if (ended === 'done' && problem !== undefined) notice.value = { kind: 'error', say: problem };
}

/**
 * Hands the host a changed drive as a file, so that it can be opened again like any other.
 * @param instead what it is opened from where that fails
 */
export async function asFile(
  followed: FollowedDrive,
  instead: Source,
  { signal }: Pick<Job, 'signal'>,
): Promise<OpenedDrive> {
  const { gpxFileOf } = await import('../host/drive-file.ts');
  const file = gpxFileOf(followed);
  const added = file && (await addFile(file, signal));
  if (!added?.ok) return { followed, source: instead };
  madeHere.value = [...madeHere.peek(), added.value.source];
  const positions = followed.legs.reduce((sum, { alongM }) => sum + alongM.length, 0);
  const track = { kind: 'track' as const, number: 1, name: followed.name, positions };
  return { followed: { ...followed, tracks: [track], taken: 1 }, source: added.value.source };
}

/** Brings back the drive as it was before its last change. */
export function undoChange(): void {
  const last = changedFrom.peek().at(-1);
  const now = openedDrive.peek();
  if (!last || !now) return;
  changedFrom.value = changedFrom.peek().slice(0, -1);
  undone.value = [...undone.peek(), { drive: now, say: last.say }];
  showInstead(last.drive);
}

/** Changes the drive once more as it was before the last undoing. */
export function redoChange(): void {
  const last = undone.peek().at(-1);
  const now = openedDrive.peek();
  if (!last || !now) return;
  undone.value = undone.peek().slice(0, -1);
  changedFrom.value = [...changedFrom.peek(), { drive: now, say: last.say }];
  showInstead(last.drive);
}

function showInstead({ followed, source }: OpenedDrive): void {
  const now = openedDrive.peek()?.followed.driveId;
  report.value = undefined;
  selectedId.value = undefined;
  cursorM.value = Math.min(cursorM.peek(), followed.lengthM);
  if (now !== undefined) carryDay(now, followed.driveId);
  openedDrive.value = { followed, source, ...(now === undefined ? {} : { insteadOf: now }) };
}

/** Saves the open drive where the user chooses. */
export async function saveAsGpx(): Promise<void> {
  const drive = openedDrive.peek();
  if (!drive) return;
  const { gpxFileOf } = await import('../host/drive-file.ts');
  const file = gpxFileOf(drive.followed);
  if (file) {
    downloadFile(file);
    savedPlan.value = plan.peek() ?? laidOut.peek()?.plan;
  } else notice.value = { kind: 'error', say: 'The drive holds nothing that could be written as a track.' };
}
