import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { dialog } from '../../state/page.ts';
import { look } from '../../vehicle/fleet-work.ts';

/** Without what the axles carry empty nothing can be worked out: said, and led to the fields of the card. */
export function NoEmptyWeight({ id, card }: { id: string; card: VehicleCard }) {
  return (
    <div class="empty">
      <h2>The card has no empty weight</h2>
      <p>
        What each axle of <bdi>{clip(card.name, 80)}</bdi> carries when it is empty and ready to drive is not
        known. Weigh it axle by axle on a public weighbridge, with 90 % of the fuel, and write both figures on
        its card; and whether the driver sat in it and the water tank was full.
      </p>
      <p>
        <button type="button" class="chief" onClick={() => openCardAt(id, 'card-emptyFrontKg')}>
          Enter the empty weight…
        </button>
      </p>
    </div>
  );
}

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

function openCardAt(id: string, field: string): void {
  look(id);
  dialog.value = 'vehicles';
  // once the dialog stands
  requestAnimationFrame(() => requestAnimationFrame(() => document.getElementById(field)?.focus()));
}
