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
  // once the dialog stands
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const found = document.getElementById(field);
      const folded = found?.closest('details');
      if (folded) folded.open = true;
      found?.focus();
    }),
  );
}
