import { useRef } from 'preact/hooks';
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

/** The fleet: choose a vehicle; add, copy, delete, import and export cards. */
export function FleetList() {
  const fresh = writingFresh.value;
  const chosen = fresh ? undefined : vehicle.value;
  const file = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLUListElement>(null);
  const undo = useRef<HTMLButtonElement>(null);
  // after the change is drawn: what was pressed may be gone, and the keyboard must not lose its place
  const focusSoon = (find: () => HTMLElement | null | undefined) => setTimeout(() => find()?.focus(), 0);
  const name = () => document.getElementById('card-name');
  const inList = () => list.current?.querySelector<HTMLElement>('[aria-pressed="true"]');

  return (
    <div class="vehicle-fleet">
      <ul aria-label="Fleet" ref={list}>
        {vehicles.value.map(({ id, card }) => (
          <li key={id}>
            <button type="button" aria-pressed={id === chosen?.id} onClick={() => look(id)}>
              <bdi>{card.name}</bdi>
              {drafts.value[id] && <span class="small soft"> not kept yet</span>}
            </button>
          </li>
        ))}
        {freshId.value !== undefined && (
          <li>
            <button type="button" aria-pressed={fresh} onClick={writeFresh}>
              <bdi>{drafts.value[freshId.value]?.name.trim() || 'New vehicle'}</bdi>
              <span class="small soft"> not kept yet</span>
            </button>
          </li>
        )}
      </ul>
      <div class="vehicle-actions">
        <button
          type="button"
          onClick={() => {
            writeFresh();
            focusSoon(name);
          }}
        >
          New
        </button>
        <button
          type="button"
          disabled={!chosen}
          onClick={async () => {
            if (!chosen) return;
            const copy = { ...chosen.card, name: `${chosen.card.name.slice(0, 190)}, copy` };
            if (await addCard(copy, 'Duplicated.')) focusSoon(name);
          }}
        >
          Duplicate
        </button>
        <button
          type="button"
          disabled={!chosen}
          onClick={async () => {
            if (await deleteChosen()) focusSoon(() => undo.current);
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
            const field = event.currentTarget;
            const [taken] = field.files ?? [];
            if (taken) await addFromFile(taken);
            field.value = '';
          }}
        />
      </div>
      <p role="status" class={said.value?.kind === 'fault' ? 'card-fault' : 'soft'}>
        {said.value?.text ?? ''}
      </p>
      {deleted.value && (
        <button
          type="button"
          ref={undo}
          onClick={async () => {
            if (await undoDelete()) focusSoon(inList);
          }}
        >
          Undo: bring back {deleted.value.vehicle.card.name}
        </button>
      )}
    </div>
  );
}
