import { dialog } from '../state/page.ts';

/** Opens the shelf's dialog from a sentence. */
export function LookAtShelf() {
  return (
    <button
      type="button"
      class="quiet"
      onClick={() => {
        dialog.value = 'shelf';
      }}
    >
      Look at the shelf
    </button>
  );
}
