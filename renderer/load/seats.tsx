import type { LoadItem } from '../../geo/load/load-list.ts';
import { PRESETS } from '../../geo/load/presets.ts';
import { ok } from '../../geo/result.ts';
import type { Seat, VehicleCard } from '../../geo/vehicle/card.ts';
import { clip } from '../drive/words.ts';
import { kgField, readItemKg } from './fields.ts';
import { change, replace } from './state.ts';
import { useTyped } from './use-typed.ts';
import { kgText } from './words.ts';

const PASSENGER = PRESETS.find(({ id }) => id === 'passenger');
const PASSENGER_KG = PASSENGER?.massKg ?? 75;

/** Who sits where: one figure a seat, nothing for an empty one. */
export function Seats({ card, items }: { card: VehicleCard; items: readonly LoadItem[] }) {
  const seats = card.seats ?? [];
  if (seats.length === 0) return null;
  return (
    <section class="load-seats" aria-label="People">
      <h3>People</h3>
      {seats.map((seat) => (
        <SeatTaken key={seat.name} seat={seat} card={card} items={items} />
      ))}
      <p class="small soft">
        {PASSENGER_KG} kg: {PASSENGER?.source}.
      </p>
    </section>
  );
}

function SeatTaken({ seat, card, items }: { seat: Seat; card: VehicleCard; items: readonly LoadItem[] }) {
  const driving = /^driver\b/i.test(seat.name);
  const index = items.findIndex(({ place }) => place === seat.name);
  const taken = items[index];
  const called = clip(seat.name, 40);
  const sits = (massKg: number, merging?: string) => {
    if (taken) {
      if (massKg === 0)
        change(
          items.filter((each) => each !== taken),
          `${called}: nobody`,
          merging,
        );
      else replace(index, { ...taken, massKg }, `${called}: ${kgText(massKg)}`, merging);
    } else if (massKg !== 0)
      change([...items, personOn(seat, driving, massKg)], `${called}: ${kgText(massKg)}`, merging);
  };
  const kg = useTyped(
    taken?.massKg ?? 0,
    (massKg) => (massKg === 0 ? '' : kgField(massKg)),
    (text) => (text.trim() === '' ? ok(0) : readItemKg(text)),
    (massKg) => sits(massKg, `seat ${seat.name}`),
  );
  if (driving && card.runningOrder?.includesDriver && !taken)
    return (
      <p class="load-seat-row">
        <span>{called}</span> <span class="soft">75 kg, in the running order</span>
      </p>
    );
  return (
    <div class="load-seat-row">
      <label>
        <span>{called}</span> <input placeholder="nobody" {...kg.field} /> kg
      </label>
      {!taken && (
        <button type="button" onClick={() => sits(PASSENGER_KG)}>
          {PASSENGER_KG} kg<span class="unseen"> on {called}</span>
        </button>
      )}
      {kg.fault !== undefined && <p class="small problem-inline">{kg.fault}</p>}
    </div>
  );
}

function personOn({ name, xM }: Seat, driving: boolean, massKg: number): LoadItem {
  return driving
    ? { name: 'Driver', massKg, xM, kind: 'driver', place: name }
    : { name: `Passenger, ${name}`.slice(0, 200), massKg, xM, kind: 'person', place: name };
}
