import './vehicle.css';
import { useRef } from 'preact/hooks';
import { cardWarnings } from '../../geo/vehicle/card-warnings.ts';
import { type Draft, draftOf, EMPTY_DRAFT } from '../../geo/vehicle/form/draft.ts';
import { readDraft } from '../../geo/vehicle/form/read-draft.ts';
import { settings, vehicle } from '../state/kept.ts';
import { CardDrawing } from './card-drawing.tsx';
import { CardForm } from './card-form.tsx';
import { FleetList } from './fleet-list.tsx';
import { drafts, freshId, saveDraft, type, undoChanges, writingFresh } from './fleet-work.ts';

/** The fleet's cards: choose one, change it, and save it. */
export function VehicleEditor() {
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
        <p>No vehicle yet. Begin with New, or import a card.</p>
      )}
    </div>
  );
}

/** One card in the form. @param begun what stands in it before anything is typed */
function Card({ id, name, begun }: { id: string; name: string; begun: Draft }) {
  const form = useRef<HTMLFormElement>(null);
  const draft = drafts.value[id] ?? begun;
  const read = readDraft(draft);
  const warnings = read.card ? cardWarnings(read.card) : [];
  return (
    <form
      class="vehicle-card"
      ref={form}
      noValidate
      aria-label={`Card of ${name}`}
      onSubmit={async (event) => {
        event.preventDefault();
        if (!(await saveDraft(id)))
          form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
      }}
    >
      <div class="vehicle-looks">
        <CardDrawing figures={read.figures} rackFitted={draft.rackFitted} places={read.places.rows} />
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
      <CardForm draft={draft} read={read} change={(next) => type(id, next)} />
      <div class="vehicle-save">
        <button type="submit" class="chief">
          Save
        </button>
        <button type="button" onClick={() => undoChanges(id)}>
          Undo changes
        </button>
        <span class="small soft">Measure the vehicle; a brochure leaves out what was added.</span>
      </div>
    </form>
  );
}
