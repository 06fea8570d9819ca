import { redo, undo } from './state.ts';

/** Where Ctrl+Z takes back letters and not a change of the load. */
const OF_THEIR_OWN = '.load-ask input, dialog';

/** Ctrl+Z, Ctrl+Shift+Z and Ctrl+Y anywhere in the view. @returns the way to end it */
export function listenToUndo(page: Window): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    if (event.target instanceof Element && event.target.closest(OF_THEIR_OWN)) return;
    const key = event.key.toLowerCase();
    if (key === 'z') (event.shiftKey ? redo : undo)();
    else if (key === 'y' && !event.shiftKey) redo();
    else return;
    event.preventDefault();
  };
  page.addEventListener('keydown', onKey);
  return () => page.removeEventListener('keydown', onKey);
}
