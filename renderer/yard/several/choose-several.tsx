import './several.css';
import { PAIRS_MOST } from '../../../main/contract/hand-over/pairs-most.ts';
import { columns, rows } from '../state/yard.ts';
import { endMarking, handOverMarked, mark, markedPairs, marking } from './marked.ts';

/** Begins and ends the choice of cells that are handed over together. */
export function HandOverSeveral() {
  return (
    <button
      type="button"
      class="yard-beside"
      aria-pressed={marking.value}
      onClick={() => {
        if (marking.peek()) endMarking();
        else marking.value = true;
      }}
    >
      Hand over several
    </button>
  );
}

/** While cells are chosen: how many are, and what becomes of them. */
export function ChooseSeveral() {
  if (!marking.value) return null;
  const count = markedPairs.value.length;
  return (
    <section class="yard-choosing" aria-label="Hand over several">
      <p class="small" role="status">
        <b>{count} chosen.</b> Press the cells to hand over; a drive’s name takes its whole row
        <span class="yard-wide-only">, a vehicle’s head its whole column</span>.
        {count > PAIRS_MOST && ` No more than ${PAIRS_MOST} go at a time: the first are taken.`}
      </p>
      <span class="yard-gap" />
      <button type="button" onClick={() => mark(rows.peek(), columns.peek())}>
        All shown
      </button>
      <button type="button" onClick={endMarking}>
        Cancel
      </button>
      <button type="button" class="chief" disabled={count === 0} onClick={handOverMarked}>
        Hand over {Math.min(count, PAIRS_MOST)}…
      </button>
    </section>
  );
}
