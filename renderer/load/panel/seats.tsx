import { useId } from 'preact/hooks';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { PRESETS } from '../../../geo/load/list/presets.ts';
import { kgField, readItemKg } from '../../../geo/load/list/read-entries.ts';
import { isDriverSeat } from '../../../geo/load/places/spots.ts';
import { kgText } from '../../../geo/load/weigh/say-plates.ts';
import { ok } from '../../../geo/result.ts';
import type { Seat, VehicleCard } from '../../../geo/vehicle/card.ts';
import { clip } from '../../drive/words.ts';
import { useTyped } from '../fields/use-typed.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change, replace } from '../state/state.ts';

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

/** The driver that a running order holds; of a heavier one only what is beyond it is listed. */
const DRIVER_KG = 75;

function SeatTaken({ seat, card, items }: { seat: Seat; card: VehicleCard; items: readonly LoadItem[] }) {
  const id = useId();
  const driving = isDriverSeat(seat.name);
  const countedKg = driving && card.runningOrder?.includesDriver ? DRIVER_KG : 0;
  const index = items.findIndex(({ place }) => place === seat.name);
  const taken = items[index];
  const others = items.filter((item) => item !== taken && item.place === seat.name);
  const called = clip(seat.name, 40);
  const sits = (kg: number, merging?: string) => {
    const massKg = Math.round((kg - countedKg) * 1000) / 1000;
    const did = `${called}: ${kg === 0 ? 'nobody' : kgText(kg)}`;
    if (!taken) change([...items, personOn(seat, driving, countedKg, massKg)], did, merging);
    else if (massKg !== 0) replace(index, { ...taken, massKg }, did, merging);
    else
      change(
        items.filter((each) => each !== taken),
        did,
        merging,
      );
  };
  const kg = useTyped(
    countedKg + (taken?.massKg ?? 0),
    (massKg) => (massKg === 0 ? '' : kgField(massKg)),
    (text) => (text.trim() === '' ? ok(countedKg) : readItemKg(text)),
    (massKg) => sits(massKg, `seat ${seat.name}`),
  );
  return (
    <div class="load-seat-row">
      <label>
        <span>{called}</span> <input id={id} placeholder="nobody" {...kg.field} /> kg
      </label>
      {countedKg > 0 ? (
        <span class="small soft">{DRIVER_KG} kg in the running order</span>
      ) : (
        !taken && (
          <button
            type="button"
            onClick={() => {
              sits(PASSENGER_KG);
              focusIfLost(id);
            }}
          >
            {PASSENGER_KG} kg<span class="unseen"> on {called}</span>
          </button>
        )
      )}
      {others.length > 0 && (
        <p class="small problem-inline">
          {others.length} more listed on this seat,{' '}
          {kgText(others.reduce((sum, { massKg }) => sum + massKg, 0))}.
        </p>
      )}
      {kg.fault !== undefined && (
        <p role="alert" class="small problem-inline">
          {kg.fault}
        </p>
      )}
    </div>
  );
}

function personOn({ name, xM }: Seat, driving: boolean, countedKg: number, massKg: number): LoadItem {
  // no second driver, only more of the one
  if (countedKg > 0)
    return { name: `Driver beyond ${countedKg} kg`, massKg, xM, kind: 'person', place: name };
  return driving
    ? { name: 'Driver', massKg, xM, kind: 'driver', place: name }
    : { name: `Passenger, ${name}`.slice(0, 200), massKg, xM, kind: 'person', place: name };
}
