import { useRef } from 'preact/hooks';
import { vehicle } from '../state/kept.ts';
import { aboard } from '../state/loads.ts';
import { focusIfLost } from './state/keep-focus.ts';
import { openList, saveList } from './state/load-file.ts';
import { change, redo, redoes, undo, undoes } from './state/state.ts';

function clear(): void {
  change([], 'took everything off');
  focusIfLost('load-undo');
}

/** Undo, redo, clear; load lists to and from files; the load sheet. */
export function LoadToolbar() {
  const nothing = aboard.value.length === 0;
  return (
    <div class="load-toolbar">
      <button
        type="button"
        id="load-undo"
        aria-keyshortcuts="Control+Z"
        {...(undoes.value === undefined ? { disabled: true } : { title: `Undo: ${undoes.value}` })}
        onClick={() => {
          undo();
          focusIfLost('load-redo');
        }}
      >
        Undo
      </button>
      <button
        type="button"
        id="load-redo"
        aria-keyshortcuts="Control+Shift+Z"
        {...(redoes.value === undefined ? { disabled: true } : { title: `Redo: ${redoes.value}` })}
        onClick={() => {
          redo();
          focusIfLost('load-undo');
        }}
      >
        Redo
      </button>
      <button type="button" disabled={nothing} onClick={clear}>
        Clear
      </button>
      <span class="load-toolbar-gap" />
      <OpenList />
      <button
        type="button"
        disabled={nothing}
        onClick={() => saveList(aboard.peek(), vehicle.peek()?.card.name ?? '')}
      >
        Save list
      </button>
      <button type="button" onClick={() => window.print()}>
        Print load sheet
      </button>
    </div>
  );
}

function OpenList() {
  const file = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => file.current?.click()}>
        Open list…
      </button>
      <input
        ref={file}
        type="file"
        accept=".json,application/json"
        aria-label="Load list to open"
        hidden
        onChange={async (event) => {
          const field = event.currentTarget;
          const [chosen] = field.files ?? [];
          if (chosen) await openList(chosen);
          field.value = '';
        }}
      />
    </>
  );
}
