import { dialog } from '../state/page.ts';
import { plan, redoPlaces, undoPlaces } from '../state/plan.ts';
import { shownView } from '../state/views.ts';
import { redoChange, undoChange } from './take-way.ts';

/** What a key with Ctrl or Cmd means for changes of the drive; undefined where it means nothing. */
export function undoKey({
  key,
  ctrlKey,
  metaKey,
  shiftKey,
  altKey,
}: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>): 'undo' | 'redo' | undefined {
  if (altKey || ctrlKey === metaKey) return undefined;
  const letter = key.toLowerCase();
  if (letter === 'z') return shiftKey ? 'redo' : 'undo';
  return letter === 'y' && ctrlKey && !shiftKey ? 'redo' : undefined;
}

/** Ctrl or Cmd and Z take back a change of the drive, with Shift they make it again; fields keep their own. @returns the way to end it */
export function undoByKeys(page: Window): () => void {
  const onKey = (event: KeyboardEvent) => {
    const wants = undoKey(event);
    if (wants === undefined || dialog.peek() !== undefined || shownView.peek() !== 'drive') return;
    if (event.target instanceof Element && event.target.closest('input, textarea')) return;
    event.preventDefault();
    if (plan.peek()) (wants === 'undo' ? undoPlaces : redoPlaces)();
    else (wants === 'undo' ? undoChange : redoChange)();
  };
  page.addEventListener('keydown', onKey);
  return () => page.removeEventListener('keydown', onKey);
}
