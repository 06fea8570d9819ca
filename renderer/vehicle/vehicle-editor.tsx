import './vehicle.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { CardFigure } from '../../geo/vehicle/bounds.ts';
import { cardWarnings, toAffirm } from '../../geo/vehicle/card-warnings.ts';
import { type Draft, draftOf, EMPTY_DRAFT } from '../../geo/vehicle/form/draft.ts';
import { FIELDS } from '../../geo/vehicle/form/fields.ts';
import { readDraft } from '../../geo/vehicle/form/read-draft.ts';
import { settings, vehicle } from '../state/kept.ts';
import { CardDrawing } from './card-drawing.tsx';
import { CardForm } from './card-form.tsx';
import { FleetList } from './fleet-list.tsx';
import { drafts, forgetSaid, freshId, saveDraft, type, undoChanges, writingFresh } from './fleet-work.ts';

/** The fleet's cards: choose one, change it, and save it. */
export function VehicleEditor() {
  useEffect(() => forgetSaid, []);
  const chosen = vehicle.value;
  const fresh = writingFresh.value ? freshId.value : undefined;
  return (
    <div class="vehicle-editor">
      <FleetList />
      {fresh !== undefined ? (
        <Card key={fresh} id={fresh} name="New vehicle" begun={EMPTY_DRAFT} />
      ) : chosen ? (
        <Card
          key={chosen.id}
          id={chosen.id}
          name={chosen.card.name}
          begun={draftOf(chosen.card, settings.value.units)}
        />
      ) : (
        <p>No vehicle yet. Begin with New card, or open a card’s file.</p>
      )}
    </div>
  );
}

/** One card in the form. @param begun what stands in it before anything is typed */
function Card({ id, name, begun }: { id: string; name: string; begun: Draft }) {
  const form = useRef<HTMLFormElement>(null);
  const draft = drafts.value[id] ?? begun;
  const fresh = id === freshId.value;
  const { said, leave, tried } = useSaid(draft);
  const read = readDraft(draft);
  const warnings = read.card ? cardWarnings(read.card, settings.value.units) : [];
  const doubt = read.card && toAffirm(read.card, settings.value.units);
  const [asked, setAsked] = useState<string>();
  const isAsked = doubt !== undefined && asked === doubt;
  return (
    <form
      class="vehicle-card"
      ref={form}
      noValidate
      aria-label={`Card of ${name}`}
      onSubmit={async (event) => {
        event.preventDefault();
        if (doubt !== undefined && !isAsked) return setAsked(doubt);
        if (await saveDraft(id)) return;
        tried();
        requestAnimationFrame(() => focusFirstFault(form.current));
      }}
    >
      <div class="vehicle-looks">
        <CardDrawing
          figures={read.figures}
          rackFitted={draft.rackFitted}
          places={read.places.rows}
          units={settings.value.units}
        />
        {warnings.length > 0 && (
          <section aria-label="Check these">
            <h3>Check these</h3>
            <ul class="card-warnings">
              {warnings.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <CardForm
        draft={draft}
        read={read}
        fresh={fresh}
        said={said}
        leave={leave}
        change={(next) => type(id, next)}
      />
      <div class="vehicle-save">
        <button type="submit" class="chief">
          {isAsked ? 'It is so: keep this card' : 'Keep this card'}
        </button>
        <button type="button" disabled={drafts.value[id] === undefined} onClick={() => undoChanges(id)}>
          {fresh ? 'Throw it away' : 'Put back as it was'}
        </button>
        <span class={isAsked ? 'card-fault' : 'small soft'} role="status">
          {isAsked ? doubt : 'Measure the vehicle; a brochure leaves out what was added.'}
        </span>
      </div>
    </form>
  );
}

/** Which fields are said to be wrong: those that were left, those that held something at first, all once it was to be kept. */
function useSaid(draft: Draft) {
  const [left, setLeft] = useState<ReadonlySet<CardFigure | 'name'>>(() => filledIn(draft));
  const [all, setAll] = useState(false);
  return {
    said: (field: CardFigure | 'name') => all || left.has(field),
    leave: (field: CardFigure | 'name') => setLeft((before) => new Set([...before, field])),
    tried: () => setAll(true),
  };
}

function filledIn({ name, text }: Draft): ReadonlySet<CardFigure | 'name'> {
  const filled = FIELDS.map(({ key }) => key).filter((key) => text[key] !== '');
  return new Set([...filled, ...(name === '' ? [] : (['name'] as const))]);
}

/** The keyboard goes to the first field that is wrong, unfolding what hides any. */
function focusFirstFault(form: HTMLFormElement | null): void {
  const faults = [...(form?.querySelectorAll<HTMLElement>('[aria-invalid="true"]') ?? [])];
  for (const fault of faults) {
    const folded = fault.closest('details');
    if (folded) folded.open = true;
  }
  faults[0]?.focus();
}
