import { choicesFor } from '../../../geo/load/ask/choices.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { AskAnswer } from './ask-answer.tsx';
import { AskFields } from './ask-fields.tsx';
import { askFor, question } from './ask-state.ts';

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
        {choicesFor(card).map(({ title, choices }) => (
          <optgroup key={title} label={title}>
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
          <AskFields asks={asks} card={card} />
          <AskAnswer />
        </div>
      )}
    </section>
  );
}
