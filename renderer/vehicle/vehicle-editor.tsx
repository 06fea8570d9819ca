import './vehicle.css';
import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { cardWarnings } from '../../geo/vehicle/card-warnings.ts';
import type { FleetVehicle } from '../../main/contract/fleet.ts';
import { chooseVehicle, saveVehicles } from '../state/actions.ts';
import { vehicle, vehicles } from '../state/state.ts';
import { BLANK_CARD } from './blank-card.ts';
import { CardDrawing } from './card-drawing.tsx';
import { exportCard, importCard } from './card-file.ts';
import { CardForm } from './card-form.tsx';
import { type Draft, draftOf, readDraft } from './draft.ts';

/** The fleet's cards: choose one, change it, and keep it. What is typed stays until it is kept or left. */
export function VehicleEditor() {
  const chosen = vehicle.value;
  const draft = useSignal<{ readonly id: string; readonly draft: Draft } | undefined>(undefined);
  const say = useSignal<{ readonly kind: 'done' | 'fault'; readonly text: string } | undefined>(undefined);
  const deleted = useSignal<{ readonly fleet: readonly FleetVehicle[]; readonly name: string } | undefined>(
    undefined,
  );
  const file = useRef<HTMLInputElement>(null);

  const current =
    chosen === undefined
      ? undefined
      : draft.value?.id === chosen.id
        ? draft.value.draft
        : draftOf(chosen.card);
  const read = current === undefined ? undefined : readDraft(current);

  const keep = async (fleet: readonly FleetVehicle[], done: string, choose?: string): Promise<boolean> => {
    const problem = await saveVehicles([...fleet]);
    say.value = problem === undefined ? { kind: 'done', text: done } : { kind: 'fault', text: problem };
    if (problem !== undefined) return false;
    draft.value = undefined;
    if (choose !== undefined) chooseVehicle(choose);
    return true;
  };
  const add = (card: FleetVehicle['card'], done: string) => {
    const id = crypto.randomUUID();
    deleted.value = undefined;
    void keep([...vehicles.value, { id, card }], done, id);
  };

  return (
    <div class="vehicle-editor">
      <div class="vehicle-fleet">
        <ul aria-label="Fleet">
          {vehicles.value.map(({ id, card }) => (
            <li key={id}>
              <button
                type="button"
                aria-pressed={id === chosen?.id}
                onClick={() => {
                  draft.value = undefined;
                  say.value = undefined;
                  chooseVehicle(id);
                }}
              >
                {card.name}
              </button>
            </li>
          ))}
        </ul>
        <div class="vehicle-actions">
          <button type="button" onClick={() => add(BLANK_CARD, 'A new card. Put in what you measured.')}>
            New
          </button>
          <button
            type="button"
            disabled={!chosen}
            onClick={() =>
              chosen &&
              add({ ...chosen.card, name: `${chosen.card.name.slice(0, 190)}, copy` }, 'Duplicated.')
            }
          >
            Duplicate
          </button>
          <button
            type="button"
            disabled={!chosen}
            onClick={async () => {
              if (!chosen) return;
              const before = vehicles.value;
              const left = before.filter(({ id }) => id !== chosen.id);
              if (await keep(left, `${chosen.card.name} is deleted.`, left[0]?.id))
                deleted.value = { fleet: before, name: chosen.card.name };
            }}
          >
            Delete
          </button>
          <button type="button" onClick={() => file.current?.click()}>
            Import…
          </button>
          <button type="button" disabled={!chosen} onClick={() => chosen && exportCard(chosen.card)}>
            Export
          </button>
          <input
            ref={file}
            type="file"
            accept=".json,application/json"
            aria-label="Vehicle card to import"
            hidden
            onChange={async (event) => {
              const [taken] = event.currentTarget.files ?? [];
              event.currentTarget.value = '';
              if (!taken) return;
              const card = await importCard(taken);
              if (card.ok) add(card.value, `${taken.name} is in the fleet.`);
              else say.value = { kind: 'fault', text: card.error.message };
            }}
          />
        </div>
        <div role="status" class={say.value?.kind === 'fault' ? 'card-fault' : 'soft'}>
          {say.value?.text ?? ''}{' '}
          {deleted.value && (
            <button
              type="button"
              onClick={() => {
                const back = deleted.value;
                deleted.value = undefined;
                if (back) void keep(back.fleet, `${back.name} is back.`);
              }}
            >
              Undo
            </button>
          )}
        </div>
      </div>
      {chosen && current && read ? (
        <form
          class="vehicle-card"
          aria-label={`Card of ${chosen.card.name}`}
          onSubmit={(event) => {
            event.preventDefault();
            const { card } = read;
            if (card)
              void keep(
                vehicles.value.map((each) => (each.id === chosen.id ? { id: each.id, card } : each)),
                'Kept. The drive is checked with it.',
              );
            else
              say.value = {
                kind: 'fault',
                text: 'Some figures are missing or wrong; they are marked below.',
              };
          }}
        >
          <CardDrawing figures={read.figures} rackFitted={current.rackFitted} />
          {read.card && cardWarnings(read.card).length > 0 && (
            <section aria-label="To think of">
              <h3>To think of</h3>
              <ul class="card-warnings">
                {cardWarnings(read.card).map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </section>
          )}
          <CardForm
            draft={current}
            read={read}
            change={(next) => {
              say.value = undefined;
              draft.value = { id: chosen.id, draft: next };
            }}
          />
          <div class="vehicle-keep">
            <button type="submit" class="chief" disabled={draft.value === undefined}>
              Keep
            </button>
            <button
              type="button"
              disabled={draft.value === undefined}
              onClick={() => {
                draft.value = undefined;
              }}
            >
              Take back what is typed
            </button>
            <span class="small soft">Measure the vehicle; a brochure leaves out what was added.</span>
          </div>
        </form>
      ) : (
        <p>No vehicle yet. Begin with New, or import a card.</p>
      )}
    </div>
  );
}
