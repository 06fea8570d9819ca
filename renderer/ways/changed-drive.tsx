import { useEffect, useRef } from 'preact/hooks';
import { clip } from '../../geo/units/text.ts';
import { reopenPlan } from '../actions/begin-plan.ts';
import { redoChange, saveAsGpx, undoChange } from '../actions/take-way.ts';
import { changedFrom, isMadeHere, undone } from '../state/changed.ts';
import { openedDrive } from '../state/opened.ts';
import { laidOut, plan } from '../state/plan.ts';

/** What was changed about the drive, with the ways back and on; and that no file of the user's holds it yet. */
export function ChangedDrive() {
  const changes = changedFrom.value;
  const taken = undone.value.at(-1);
  const last = changes.at(-1);
  const box = useRef<HTMLElement>(null);
  const id = openedDrive.value?.followed.driveId;
  const insteadOf = openedDrive.value?.insteadOf;

  // the button that made the change has gone with what it stood in
  useEffect(() => {
    if (insteadOf !== undefined && document.activeElement === document.body) box.current?.focus();
  }, [id]);

  // a plan has its own ways back
  if (plan.value || (!last && !taken && !isMadeHere.value)) return null;
  return (
    <section ref={box} class="changed-drive" aria-label="Changes of the drive" tabIndex={-1}>
      <p>
        {last ? (
          <>
            <b>Changed.</b> {clip(last.say, 200)}
            {changes.length > 1 && <span class="soft"> {changes.length} changes in all.</span>}
          </>
        ) : taken ? (
          'The drive is as it was.'
        ) : (
          'This drive was made here and is in no file of yours.'
        )}
      </p>
      <p class="changed-acts">
        {isMadeHere.value && (
          <button type="button" onClick={() => saveAsGpx()}>
            Save as GPX
          </button>
        )}
        {id !== undefined && laidOut.value?.driveId === id && (
          <button type="button" onClick={reopenPlan}>
            Change its places
          </button>
        )}
        {last && (
          <button type="button" onClick={undoChange}>
            Undo
          </button>
        )}
        {taken && (
          <button type="button" onClick={redoChange}>
            Redo
          </button>
        )}
      </p>
    </section>
  );
}
