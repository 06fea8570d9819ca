import { useId, useState } from 'preact/hooks';
import { sayEstimated } from '../../../geo/load/doubts/say-doubt.ts';
import { type Estimated, type ReadyCard, unladenFrom } from '../../../geo/load/weigh/load-card.ts';
import { printKg } from '../../../geo/units/print.ts';
import { readEntryMass } from '../../../geo/units/read-entry.ts';
import { CARD_BOUNDS } from '../../../geo/vehicle/bounds.ts';
import { saveVehicles } from '../../actions/keep.ts';
import { notice } from '../../state/happening.ts';
import { openCardAt } from './missing.tsx';

interface Props {
  readonly id: string;
  readonly card: ReadyCard;
  readonly of: Estimated;
}

/** That the empty weight is no weighed one, what it rests on, and how to make it better: one figure, or both axles. */
export function Estimate({ id, card, of }: Props) {
  const { frontKg, rearKg } = card.runningOrder;
  return (
    <section class="load-estimate" aria-label="An estimate">
      <h3>An estimate, not weighed</h3>
      <p>{sayEstimated({ kind: 'estimated', of, totalKg: frontKg + rearKg })}</p>
      <OneTotal id={id} card={card} />
      <p>
        <button type="button" onClick={() => openCardAt(id, 'card-emptyFrontKg')}>
          Enter both axles on the card…
        </button>
      </p>
    </section>
  );
}

/** One figure of a weighbridge, and what was in the vehicle then. */
function OneTotal({ id, card }: Omit<Props, 'of'>) {
  const field = useId();
  const [text, setText] = useState('');
  const [aboard, setAboard] = useState({ driver: true, freshWater: false });
  const read = readTotal(card, text, aboard);
  const fault = text.trim() !== '' && typeof read === 'string' ? read : undefined;
  return (
    <form
      class="load-total"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (typeof read === 'number') void keepUnladen(id, read);
      }}
    >
      <label for={field}>The whole vehicle on a weighbridge, nothing else aboard</label>
      <span class="load-total-field">
        <input
          id={field}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={fault !== undefined}
          onInput={({ currentTarget }) => setText(currentTarget.value.slice(0, 30))}
        />{' '}
        kg{' '}
        <button type="submit" disabled={typeof read !== 'number'}>
          Use it
        </button>
      </span>
      <label>
        <input
          type="checkbox"
          checked={aboard.driver}
          onChange={({ currentTarget }) => setAboard({ ...aboard, driver: currentTarget.checked })}
        />{' '}
        the driver was in it
      </label>
      <label>
        <input
          type="checkbox"
          checked={aboard.freshWater}
          onChange={({ currentTarget }) => setAboard({ ...aboard, freshWater: currentTarget.checked })}
        />{' '}
        the fresh water tank was full
      </label>
      {fault !== undefined && (
        <p role="alert" class="small problem-inline">
          {fault}
        </p>
      )}
    </form>
  );
}

/** @returns the unladen mass that follows, kilograms, or what is wrong with the figure */
function readTotal(
  card: ReadyCard,
  text: string,
  aboard: { readonly driver: boolean; readonly freshWater: boolean },
): number | string {
  const { least, most } = CARD_BOUNDS.unladenKg;
  const total = readEntryMass(text, { least, most });
  if (!total.ok) return total.error.message;
  const unladenKg = unladenFrom(card, total.value, aboard);
  if (unladenKg < least || unladenKg > most) return `${printKg(total.value)} is not believed of a motorhome.`;
  if (unladenKg >= card.grossKg)
    return `${printKg(total.value)} is more than the plate allows with everything aboard: was it loaded?`;
  return unladenKg;
}

/** Keeps the figure on the card: an estimate of the axles rests on it from then on. */
async function keepUnladen(id: string, unladenKg: number): Promise<void> {
  const kept = await saveVehicles((fleet) =>
    fleet.map((each) => (each.id === id ? { ...each, card: { ...each.card, unladenKg } } : each)),
  );
  notice.value =
    'problem' in kept
      ? { kind: 'error', say: kept.problem }
      : {
          kind: 'note',
          say: [
            `The card now has an unladen mass of ${printKg(unladenKg)}: without fuel, driver and water.`,
            ...kept.say,
          ].join(' '),
        };
}
