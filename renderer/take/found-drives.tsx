import { signal } from '@preact/signals';
import { clip } from '../../geo/units/text.ts';
import type { AddedFile } from '../../main/contract/source.ts';
import { notice, tellAlso } from '../state/happening.ts';
import { dialog } from '../state/page.ts';
import { openTaken } from './offer-shelf.ts';

/** Drives taken in together, with the map that came with them; one is chosen. */
export const foundDrives = signal<{ readonly drives: readonly AddedFile[]; readonly map?: AddedFile }>({
  drives: [],
});

/** Several drives were handed over at once: one is opened, the others can be opened later. */
export function FoundDrives() {
  const { drives, map } = foundDrives.value;
  return (
    <section>
      <p>One drive is open at a time. The others stay under Open…, Opened before.</p>
      <ul class="choices">
        {drives.map((drive, i) => (
          <li key={`${i} ${drive.name}`}>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                dialog.value = undefined;
                void openFound(map === undefined ? [drive] : [drive, map]);
              }}
            >
              <bdi>{clip(drive.name, 80)}</bdi>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What was said of the other files handed over with the drives is not lost over the one that is opened. */
async function openFound(added: readonly AddedFile[]): Promise<void> {
  const others = notice.peek();
  await openTaken(added);
  tellAlso(others);
}
