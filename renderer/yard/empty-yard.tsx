import { LookAtShelf } from '../shelf/look-at-shelf.tsx';
import { OWN_DRIVES } from '../shelf/own-drives.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { Aside } from './aside/aside.tsx';
import { ChooseDrives } from './choose-drives.tsx';
import { sheetsOut } from './state/out.ts';
import { aside, bin } from './state/yard.ts';

/** Nothing is there yet: what the yard is for, and how to begin. */
export function EmptyYard() {
  return (
    <div class="empty">
      <h2>Which vehicle may take which drive</h2>
      <p>
        Drop the firm’s drives here, as many GPX files as you like: each is checked once with every vehicle of
        the fleet. When a map, a card or a local note changes, the yard says which answers are old, and what
        became otherwise.
      </p>
      <p>
        <ChooseDrives chief />
      </p>
      {mapsOnShelf.value === 0 && (
        <p class="small">
          {OWN_DRIVES} <LookAtShelf />
        </p>
      )}
      {bin.value.length > 0 && (
        <p>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              aside.value = { kind: 'bin' };
            }}
          >
            Look into the bin ({bin.value.length})
          </button>
        </p>
      )}
      {sheetsOut.value.length > 0 && (
        <p>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              aside.value = { kind: 'out' };
            }}
          >
            What is out ({sheetsOut.value.length})
          </button>
        </p>
      )}
      {(aside.value?.kind === 'bin' || aside.value?.kind === 'out') && <Aside shown={aside.value} />}
    </div>
  );
}
