import './rows.css';
import { useEffect, useRef } from 'preact/hooks';
import { select } from '../actions/choose.ts';
import { findings, report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { shownPart } from '../state/parts.ts';
import {
  isFoldedAway,
  matchingFindings,
  selectedId,
  showEveryFinding,
  showFolded,
  shownFindings,
} from '../state/shown.ts';
import { FindingRow } from './row.tsx';

/** A row per finding, in driving order. Arrow keys go through them while one has the focus. */
export function Rows() {
  const list = useRef<HTMLOListElement>(null);
  const shown = shownFindings.value;
  const chosen = selectedId.value;

  // a mark chosen on the map or the strip brings its row into sight; the focus stays where the user is
  useEffect(() => {
    if (chosen === undefined) return;
    const row = rowsOf(list.current).find((each) => each.dataset['finding'] === chosen);
    // all of it, and where there is no room for that, or below a map by itself, its head
    if (shownPart.peek() === 'list') row?.closest('li')?.scrollIntoView({ block: 'nearest' });
    row?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);

  return (
    <section class="findings" aria-label="Findings, in driving order">
      <ol
        ref={list}
        class="rows"
        onKeyDown={(event) => {
          if (onRowKey(event, rowsOf(list.current))) event.preventDefault();
        }}
      >
        {shown.map((finding) => (
          <FindingRow
            key={finding.id}
            finding={finding}
            open={finding.id === chosen}
            units={settings.value.units}
            leaveAt={report.value?.leaveAt}
          />
        ))}
      </ol>
      <Below />
    </section>
  );
}

/** What is not in the list, and how to get it there. */
function Below() {
  const all = findings.value;
  const matching = matchingFindings.value;
  const folded = matching.filter(isFoldedAway).length;
  if (report.value && all.length === 0)
    return (
      <p class="soft below">Nothing to list: nothing that is mapped on this drive matters to this vehicle.</p>
    );
  return (
    <>
      {matching.length === 0 && all.length > 0 && (
        <p class="soft below">
          The filter hides all {all.length} findings.{' '}
          <button type="button" onClick={showEveryFinding}>
            Show all
          </button>
        </p>
      )}
      {folded > 0 && (
        <p class="soft below">
          {showFolded.value
            ? `${folded} minor ${folded === 1 ? 'one is' : 'ones are'} shown, too: `
            : `${folded}${shownFindings.value.length > 0 ? ' more' : ''} minor ${folded === 1 ? 'one is' : 'ones are'} left out: `}
          <button
            type="button"
            class="quiet"
            onClick={() => {
              showFolded.value = !showFolded.value;
            }}
          >
            {showFolded.value ? 'leave out' : 'show'}
          </button>
        </p>
      )}
    </>
  );
}

function rowsOf(list: HTMLElement | null): HTMLButtonElement[] {
  return list ? [...list.querySelectorAll<HTMLButtonElement>('button[data-finding]')] : [];
}

/** @returns whether the key was one of the list's */
function onRowKey(event: KeyboardEvent, rows: readonly HTMLButtonElement[]): boolean {
  if (event.altKey || event.ctrlKey || event.metaKey) return false;
  const target = event.target instanceof HTMLElement ? event.target : undefined;
  const at = rows.findIndex((row) => row.closest('li')?.contains(target ?? null));
  if (event.key === 'Escape' && selectedId.peek() !== undefined) {
    const row = rows.find((each) => each.dataset['finding'] === selectedId.peek());
    select(undefined);
    row?.focus();
    return true;
  }
  // inside an opened finding the arrows scroll, as everywhere
  if (at < 0 || rows[at] !== target) return false;
  const to = STEPS[event.key]?.(at, rows.length - 1);
  if (to === undefined) return false;
  rows[to]?.focus();
  return true;
}

const STEPS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowDown: (at, last) => Math.min(last, at + 1),
  ArrowUp: (at) => Math.max(0, at - 1),
  j: (at, last) => Math.min(last, at + 1),
  k: (at) => Math.max(0, at - 1),
  Home: () => 0,
  End: (_, last) => last,
};
