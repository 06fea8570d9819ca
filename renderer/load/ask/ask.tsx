import { CHOICES } from '../../../geo/load/ask/ask-about.ts';
import { kgField, readCount, readItemKg, readX, xField } from '../../../geo/load/list/read-entries.ts';
import { isGuessed, putAt } from '../../../geo/load/places/spots.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { PlaceChoice } from '../fields/place-choice.tsx';
import { useTyped } from '../fields/use-typed.ts';
import { AskAnswer } from './ask-answer.tsx';
import { askFor, COUNT_MOST, putQuestionAway, type Question, question, set } from './ask-state.ts';

/** "Can we take …?": a usual mass or anything else, where, and what it would do before it is put aboard. */
export function Ask({ card }: { card: VehicleCard }) {
  const asks = question.value;
  return (
    <section class="load-ask" aria-label="What else could come">
      <h3>
        <label for="load-ask-what">Can we take …?</label>
      </h3>
      <select
        id="load-ask-what"
        value={asks?.choice.id ?? ''}
        onChange={({ currentTarget }) => askFor(currentTarget.value)}
      >
        <option value="">choose what</option>
        {CHOICES.map(({ group, choices }) => (
          <optgroup key={group} label={group}>
            {choices.map(({ id, name, massKg, byLitre }) => (
              <option key={id} value={id}>
                {name}
                {byLitre ? ', by the litre' : `, ${massKg} kg`}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      {asks && (
        // another choice begins with fields of its own
        <div key={asks.choice.id} class="load-asked">
          <Fields asks={asks} card={card} />
          <AskAnswer card={card} close={putQuestionAway} />
        </div>
      )}
    </section>
  );
}

function Fields({ asks, card }: { asks: Question; card: VehicleCard }) {
  const { choice, one, count } = asks;
  const kg = useTyped(one.massKg, kgField, readItemKg, (massKg) => {
    const { litres: _, ...rest } = one;
    const litres = choice.byLitre ? { litres: Math.round((massKg / choice.massKg) * 10) / 10 } : {};
    set({ ...asks, one: { ...rest, massKg, ...(massKg > 0 ? litres : {}) } });
  });
  const litres = useTyped(one.litres ?? 0, kgField, readItemKg, (figure) =>
    set({
      ...asks,
      one: { ...one, litres: Math.max(0, figure), massKg: Math.max(0, figure) * choice.massKg },
    }),
  );
  const x = useTyped(one.xM, xField, readX, (xM) =>
    set({ ...asks, one: { ...putAt(one, card, xM, 0.004), xM } }),
  );
  const pieces = useTyped(
    count,
    String,
    (text) => readCount(text, COUNT_MOST),
    (wanted) => set({ ...asks, count: wanted }),
  );
  const fault = pieces.fault ?? kg.fault ?? litres.fault ?? x.fault;
  return (
    <>
      <div class="load-ask-fields">
        <label class="load-ask-name">
          <span>Name</span>
          <input
            value={one.name}
            maxLength={200}
            autoComplete="off"
            onInput={({ currentTarget }) => {
              const name = currentTarget.value;
              if (name.trim() !== '') set({ ...asks, one: { ...one, name } });
            }}
          />
        </label>
        {choice.byLitre ? (
          <label>
            <span>Litres</span>
            <input {...litres.field} />
          </label>
        ) : (
          <label>
            <span>How many</span>
            <input {...pieces.field} inputMode="numeric" />
          </label>
        )}
        <label>
          <span>kg{choice.byLitre || count === 1 ? '' : ' each'}</span>
          <input {...kg.field} />
        </label>
        <div class="load-ask-place">
          <label for="load-ask-where">Where</label>
          <PlaceChoice id="load-ask-where" item={one} card={card} put={(to) => set({ ...asks, one: to })} />
        </div>
        <label>
          <span title="metres behind the front axle">m behind</span>
          <input {...x.field} />
        </label>
      </div>
      {fault === undefined ? (
        <p class="small soft">
          {choice.byLitre ? `${choice.massKg.toFixed(2)} kg a litre` : `${choice.massKg} kg`}: {choice.source}
          .
        </p>
      ) : (
        <p role="alert" class="small problem-inline">
          {fault} Until then the figure before counts.
        </p>
      )}
      {isGuessed(card, one) && (
        <p class="small">
          Nobody has said where it goes: the middle of the vehicle is taken. Choose a place, or measure and
          write the metres.
        </p>
      )}
    </>
  );
}
