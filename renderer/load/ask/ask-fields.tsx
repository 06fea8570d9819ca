import { askAt, askKg, askLitres, COUNT_MOST, type Question } from '../../../geo/load/ask/question.ts';
import { ITEM_NAME_LONGEST } from '../../../geo/load/list/bounds.ts';
import { kgField, readCount, readItemKg, readX, xField } from '../../../geo/load/list/read-entries.ts';
import { isGuessed } from '../../../geo/load/places/spots.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings } from '../../state/kept.ts';
import { PlaceChoice } from '../fields/place-choice.tsx';
import { useTyped } from '../fields/use-typed.ts';
import { setQuestion } from './ask-state.ts';

/** What is asked about, how much of it and where: each figure counts as soon as it can be read. */
export function AskFields({ asks, card }: { asks: Question; card: VehicleCard }) {
  const { choice, one, count } = asks;
  const kg = useTyped(one.massKg, kgField, readItemKg, (massKg) => setQuestion(askKg(asks, massKg)));
  const x = useTyped(
    one.xM,
    (m) => xField(m, settings.value.units),
    readX,
    (xM) => setQuestion(askAt(asks, card, xM)),
  );
  const many = useMany(asks);
  const fault = many.fault ?? kg.fault ?? x.fault;
  return (
    <>
      <div class="load-ask-fields">
        <NameField asks={asks} />
        <label>
          <span>{choice.byLitre ? 'Litres' : 'How many'}</span>
          <input {...many.field} />
        </label>
        <label>
          <span>kg{choice.byLitre || count === 1 ? '' : ' each'}</span>
          <input {...kg.field} />
        </label>
        <div class="load-ask-place">
          <label for="load-ask-where">Where</label>
          <PlaceChoice
            id="load-ask-where"
            item={one}
            card={card}
            put={(to) => setQuestion({ ...asks, one: to })}
          />
        </div>
        <label>
          <span title="metres behind the front axle">m behind</span>
          <input {...x.field} />
        </label>
      </div>
      {fault === undefined ? (
        <p class="small soft">
          {choice.byLitre ? `${choice.massKg.toFixed(2)} kg a litre` : `${choice.massKg} kg`}, as is usual.
          Put it on a scale where it matters.
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

/** Litres of a liquid, pieces of anything else. */
function useMany(asks: Question) {
  const { choice, one, count } = asks;
  const litres = useTyped(one.litres ?? 0, kgField, readItemKg, (figure) =>
    setQuestion(askLitres(asks, figure)),
  );
  const pieces = useTyped(
    count,
    String,
    (text) => readCount(text, COUNT_MOST),
    (wanted) => setQuestion({ ...asks, count: wanted }),
  );
  if (choice.byLitre) return litres;
  return { ...pieces, field: { ...pieces.field, inputMode: 'numeric' as const } };
}

function NameField({ asks }: { asks: Question }) {
  return (
    <label class="load-ask-name">
      <span>Name</span>
      <input
        value={asks.one.name}
        maxLength={ITEM_NAME_LONGEST}
        autoComplete="off"
        onInput={({ currentTarget }) => {
          const name = currentTarget.value;
          if (name.trim() !== '') setQuestion({ ...asks, one: { ...asks.one, name } });
        }}
      />
    </label>
  );
}
