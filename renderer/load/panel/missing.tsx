import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { dialog } from '../../state/page.ts';
import { look } from '../../vehicle/fleet-work.ts';

/** Without places people, liquids and things can only be put down by their distance: said, and led to the fields. */
export function NoPlaces({ id }: { id: string }) {
  return (
    <section aria-label="No places on the card">
      <p>
        The card names no seats, tanks or lockers: what is aboard can only be put at a distance from the front
        axle.{' '}
        <button type="button" onClick={() => openCardAt(id, 'card-add-seats')}>
          Add places to the card…
        </button>
      </p>
    </section>
  );
}

/** Whether the card names a place for the load. */
export function hasPlaces({ seats = [], tanks = [], lockers = [] }: VehicleCard): boolean {
  return seats.length + tanks.length + lockers.length > 0;
}

/** Opens the vehicle's card at one of its fields. */
export function openCardAt(id: string, field: string): void {
  look(id);
  dialog.value = 'vehicles';
  requestAnimationFrame(() => focusOnce(field, FRAMES_MOST));
}

/** The dialog's code may have to be loaded first; nobody waits for it longer than a few seconds. */
const FRAMES_MOST = 300;

/** Focuses a field as soon as it is there. */
function focusOnce(field: string, framesLeft: number): void {
  const found = document.getElementById(field);
  if (!found) {
    if (framesLeft > 0) requestAnimationFrame(() => focusOnce(field, framesLeft - 1));
    return;
  }
  const folded = found.closest('details');
  if (folded) folded.open = true;
  // a dialog that opens now takes the focus first
  requestAnimationFrame(() => found.focus());
}
