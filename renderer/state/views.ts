import { signal } from '@preact/signals';
import type { Settings } from '../../main/contract/settings.ts';

export type ViewId = NonNullable<Settings['left']>['view'];

/** The views of the window, in the order of their tabs; Alt and the place in the list opens one. */
export const VIEWS = [
  { id: 'yard', name: 'Yard' },
  { id: 'drive', name: 'Drive' },
  { id: 'swing', name: 'Swing' },
  { id: 'load', name: 'Load' },
] as const satisfies readonly { readonly id: ViewId; readonly name: string }[];

/** The one that is shown. */
export const shownView = signal<ViewId>('drive');

/** How far down the page each view was left: the window scrolls as a whole where it is narrow. */
const leftAtPx = new Map<ViewId, number>();

/** Shows a view; what the one before held stays. */
export function showView(id: ViewId): void {
  if (shownView.peek() === id) return;
  leftAtPx.set(shownView.peek(), window.scrollY);
  shownView.value = id;
  requestAnimationFrame(() => window.scrollTo(0, leftAtPx.get(id) ?? 0));
}

/** @returns undefined for what names no view, as in a session kept by another version */
export function viewNamed(id: unknown): ViewId | undefined {
  return VIEWS.find((each) => each.id === id)?.id;
}

/** Alt and a digit, wherever the focus is. @returns the way to end it */
export function switchByKeys(page: Window): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const digit = /^Digit([1-9])$/.exec(event.code)?.[1];
    const chosen = digit === undefined ? undefined : VIEWS[Number(digit) - 1];
    if (!chosen) return;
    event.preventDefault();
    showView(chosen.id);
    document.getElementById(tabId(chosen.id))?.focus();
  };
  page.addEventListener('keydown', onKey);
  return () => page.removeEventListener('keydown', onKey);
}

export const tabId = (id: ViewId): string => `tab-${id}`;
export const panelId = (id: ViewId): string => `view-${id}`;
