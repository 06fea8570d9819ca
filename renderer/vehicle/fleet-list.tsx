import { useRef } from 'preact/hooks';
import { CARD_NAME_LONGEST } from '../../geo/vehicle/bounds.ts';
import type { FleetVehicle } from '../../main/contract/fleet.ts';
import { vehicle, vehicles } from '../state/kept.ts';
import { exportCard } from './card-file.ts';
import {
  addCard,
  addFromFile,
  deleteChosen,
  deleted,
  drafts,
  freshId,
  look,
  said,
  undoDelete,
  writeFresh,
  writingFresh,
} from './fleet-work.ts';
import { saveVisorCards } from './save-visor-cards.ts';

/** The fleet: choose a vehicle; add, copy and take off cards, open them from files and save them as such. */
export function FleetList() {
  const chosen = writingFresh.value ? undefined : vehicle.value;
  const undo = useRef<HTMLButtonElement>(null);
  return (
    <div class="vehicle-fleet">
      <Vehicles chosen={chosen} />
      <Actions chosen={chosen} focusUndo={() => focusSoon(() => undo.current)} />
      <p role="status" class={said.value?.kind === 'fault' ? 'card-fault' : 'soft'}>
        {said.value?.text ?? ''}
      </p>
      {deleted.value.length > 0 && (
        <ul aria-label="Taken off the fleet" class="vehicle-gone">
          {deleted.value.map((each, index) => (
            <li key={each.vehicle.id}>
              <button
                type="button"
                ref={index === 0 ? undo : null}
                onClick={async () => {
                  if (await undoDelete(each)) focusSoon(chosenInList);
                }}
              >
                Bring back <bdi>{each.vehicle.card.name}</bdi>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

const LIST_ID = 'fleet-list';

function Vehicles({ chosen }: { chosen: FleetVehicle | undefined }) {
  return (
    <ul aria-label="Fleet" id={LIST_ID}>
      {vehicles.value.map(({ id, card }) => (
        <li key={id}>
          <button type="button" aria-pressed={id === chosen?.id} onClick={() => look(id)}>
            <bdi>{card.name}</bdi>
            {drafts.value[id] && <Unsaved />}
          </button>
        </li>
      ))}
      {freshId.value !== undefined && (
        <li>
          <button type="button" aria-pressed={writingFresh.value} onClick={writeFresh}>
            <bdi>{drafts.value[freshId.value]?.name.trim() || 'New vehicle'}</bdi>
            <Unsaved />
          </button>
        </li>
      )}
    </ul>
  );
}

function Unsaved() {
  return <span class="small soft"> not kept yet</span>;
}

function Actions({ chosen, focusUndo }: { chosen: FleetVehicle | undefined; focusUndo(): void }) {
  return (
    <div class="vehicle-actions">
      <button
        type="button"
        onClick={() => {
          writeFresh();
          focusSoon(nameField);
        }}
      >
        New card
      </button>
      <button
        type="button"
        disabled={!chosen}
        onClick={async () => {
          if (chosen && (await addCard(copyOf(chosen), 'Copied.'))) focusSoon(nameField);
        }}
      >
        Copy
      </button>
      <button
        type="button"
        disabled={!chosen}
        onClick={async () => {
          if (await deleteChosen()) focusUndo();
        }}
      >
        Take off the fleet
      </button>
      <Import />
      <button type="button" disabled={!chosen} onClick={() => chosen && exportCard(chosen.card)}>
        Save as a file
      </button>
      <button type="button" disabled={vehicles.value.length === 0} onClick={() => void saveVisorCards()}>
        Visor cards of all
      </button>
    </div>
  );
}

function Import() {
  const file = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => file.current?.click()}>
        Open a card…
      </button>
      <input
        ref={file}
        type="file"
        accept=".json,application/json"
        aria-label="Vehicle card to open"
        hidden
        onChange={async (event) => {
          const field = event.currentTarget;
          const [taken] = field.files ?? [];
          if (taken) await addFromFile(taken);
          field.value = '';
        }}
      />
    </>
  );
}

function copyOf({ card }: FleetVehicle): FleetVehicle['card'] {
  const ending = ', copy';
  return { ...card, name: `${card.name.slice(0, CARD_NAME_LONGEST - ending.length)}${ending}` };
}

/** After the change is drawn: what was pressed may be gone, and the keyboard must not lose its place. */
function focusSoon(find: () => HTMLElement | null | undefined): void {
  setTimeout(() => find()?.focus(), 0);
}

function nameField(): HTMLElement | null {
  return document.getElementById('card-name');
}

function chosenInList(): HTMLElement | null | undefined {
  return document.getElementById(LIST_ID)?.querySelector<HTMLElement>('[aria-pressed="true"]');
}
