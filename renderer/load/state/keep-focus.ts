/** The mass of an item's line in the table, ready to be typed over. */
export function editRow(index: number): void {
  const field = document.getElementById(`load-kg-${index}`);
  if (field instanceof HTMLInputElement) {
    field.focus();
    field.select();
  }
}

/** Scrolls the table, never the page, to an item's line. */
export function revealRow(index: number): void {
  const row = document.getElementById(`load-kg-${index}`)?.closest('tr');
  const box = row?.closest('.load-ledger-place');
  if (!row || !box || box.scrollHeight <= box.clientHeight) return;
  const [at, seen] = [row.getBoundingClientRect(), box.getBoundingClientRect()];
  const headPx = box.querySelector('thead')?.clientHeight ?? 0;
  if (at.top < seen.top + headPx) box.scrollTop -= seen.top + headPx - at.top;
  else if (at.bottom > seen.bottom) box.scrollTop += at.bottom - seen.bottom;
}

/** After a change is drawn: where the button that was pressed is gone or can do no more, this takes the keyboard. */
export function focusIfLost(...ids: readonly string[]): void {
  requestAnimationFrame(() => {
    const { activeElement, body } = document;
    const isSpent = activeElement instanceof HTMLButtonElement && activeElement.disabled;
    if (activeElement !== null && activeElement !== body && !isSpent) return;
    for (const id of ids) {
      const found = document.getElementById(id);
      found?.focus();
      if (found && document.activeElement === found) return;
    }
  });
}

/** After a removal is drawn: the item that came into its place, or the one before, keeps the keyboard. */
export function focusNear(index: number, prefix: 'load-item' | 'load-remove'): void {
  requestAnimationFrame(() => {
    for (let i = index; i >= 0; i--) {
      const found = document.getElementById(`${prefix}-${i}`);
      if (found) return found.focus();
    }
    document.getElementById('load-undo')?.focus();
  });
}
