import { panelId, shownView, showView, tabId, VIEWS, type ViewId } from '../state/views.ts';

/** One tab a view: the arrows go from tab to tab, Tab goes on into the view. */
export function ViewTabs() {
  return (
    <div class="view-tabs" role="tablist" aria-label="Views" onKeyDown={onTabKey}>
      {VIEWS.map(({ id, name }, i) => (
        <button
          key={id}
          type="button"
          role="tab"
          id={tabId(id)}
          aria-controls={panelId(id)}
          aria-selected={shownView.value === id}
          aria-keyshortcuts={`Alt+${i + 1}`}
          tabIndex={shownView.value === id ? 0 : -1}
          onClick={() => showView(id)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}

const STEPS: Readonly<Record<string, (at: number) => number>> = {
  ArrowRight: (at) => (at + 1) % VIEWS.length,
  ArrowLeft: (at) => (at + VIEWS.length - 1) % VIEWS.length,
  Home: () => 0,
  End: () => VIEWS.length - 1,
};

function onTabKey(event: KeyboardEvent): void {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  const to = STEPS[event.key]?.(VIEWS.findIndex(({ id }) => id === shownView.peek()));
  const chosen: ViewId | undefined = to === undefined ? undefined : VIEWS[to]?.id;
  if (chosen === undefined) return;
  event.preventDefault();
  showView(chosen);
  document.getElementById(tabId(chosen))?.focus();
}
