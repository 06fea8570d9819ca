import { useId } from 'preact/hooks';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { PASSENGER } from '../../../geo/load/list/presets.ts';
import { kgField, readItemKg } from '../../../geo/load/list/read-entries.ts';
import { type SeatTaken, seatSomebody, seatTaken } from '../../../geo/load/places/seats.ts';
import { kgText } from '../../../geo/load/weigh/say-plates.ts';
import { ok } from '../../../geo/result.ts';
import { clip } from '../../../geo/units/text.ts';
import type { Seat, VehicleCard } from '../../../geo/vehicle/card.ts';
import { useTyped } from '../fields/use-typed.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change } from '../state/state.ts';

/** Who sits where: one figure a seat, nothing for an empty one. */
export function Seats({ card, items }: { card: VehicleCard; items: readonly LoadItem[] }) {
  const seats = card.seats ?? [];
  if (seats.length === 0) return null;
  return (
    <section class="load-seats" aria-label="People">
      <h3>People</h3>
      {seats.map((seat) => (
        <SeatRow key={seat.name} seat={seat} card={card} items={items} />
      ))}
      <p class="small soft">{PASSENGER.massKg} kg stand for a passenger until somebody is weighed.</p>
    </section>
  );
}

function SeatRow({ seat, card, items }: { seat: Seat; card: VehicleCard; items: readonly LoadItem[] }) {
  const id = useId();
  const taken = seatTaken(card, items, seat);
  const called = clip(seat.name, 40);
  const seats = (kg: number, merging?: string) =>
    change(seatSomebody(card, items, seat, kg), `${called}: ${kg === 0 ? 'nobody' : kgText(kg)}`, merging);
  const kg = useTyped(
    taken.massKg,
    (massKg) => (massKg === 0 ? '' : kgField(massKg)),
    (text) => (text.trim() === '' ? ok(taken.countedKg) : readItemKg(text)),
    (massKg) => seats(massKg, `seat ${seat.name}`),
  );
  const usual = () => {
    seats(PASSENGER.massKg);
    focusIfLost(id);
  };
  return (
    <div class="load-seat-row">
      <label>
        <span>{called}</span> <input id={id} placeholder="nobody" {...kg.field} /> kg
      </label>
      <Beside taken={taken} called={called} usual={usual} />
      <Others taken={taken} />
      {kg.fault !== undefined && (
        <p role="alert" class="small problem-inline">
          {kg.fault}
        </p>
      )}
    </div>
  );
}

/** What is counted already, or the usual mass for a free seat. */
function Beside({ taken, called, usual }: { taken: SeatTaken; called: string; usual(): void }) {
  if (taken.countedKg > 0)
    return <span class="small soft">{taken.countedKg} kg are in the empty weight</span>;
  if (taken.listed) return null;
  return (
    <button type="button" onClick={usual}>
      {PASSENGER.massKg} kg<span class="unseen"> on {called}</span>
    </button>
  );
}

function Others({ taken: { others } }: { taken: SeatTaken }) {
  if (others.count === 0) return null;
  return (
    <p class="small problem-inline">
      {others.count} more listed on this seat, {kgText(others.massKg)}.
    </p>
  );
}
