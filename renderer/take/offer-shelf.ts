import { clip } from '../../geo/units/text.ts';
import type { AddedFile } from '../../main/contract/source.ts';
import { keepOpened } from '../actions/keep-map.ts';
import { openAdded } from '../actions/open.ts';
import { sameSource } from '../actions/wanted.ts';
import { type Told, tellAlso } from '../state/happening.ts';
import { openedMap } from '../state/opened.ts';

/** A map file that is larger than this takes a while to read each time it is opened. */
const LARGE_BYTES = 20_000_000;

/** Opens what was chosen or dropped; a large map among it is offered to be kept on the shelf. */
export async function openTaken(added: readonly AddedFile[]): Promise<void> {
  await openAdded(added);
  const open = openedMap.peek()?.source;
  tellAlso(offerShelf(added.find(({ source }) => open && sameSource(source, open))));
}

/** @param map the map file that has been opened */
export function offerShelf(map: AddedFile | undefined): Told | undefined {
  if (!map || map.bytes <= LARGE_BYTES) return undefined;
  return {
    kind: 'note',
    say: `${clip(map.name, 80)} is read anew each time it is opened. Kept on the shelf, it is ready at once and found by itself.`,
    offers: [{ say: 'Keep it on the shelf', act: () => void keepOpened(map.source, map.name) }],
  };
}
