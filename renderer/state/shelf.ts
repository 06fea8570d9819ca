import { computed, signal } from '@preact/signals';
import type { MapChanges } from '../../main/contract/map-changes.ts';
import type { ShelfShown } from '../../main/contract/shelf.ts';
import type { Told } from './happening.ts';
import { description } from './kept.ts';

/** How many maps are on the shelf. */
export const mapsOnShelf = computed(() => description.value?.shelfMaps ?? 0);

/** The shelf as it was last looked at; a sentence where it could not be. */
export const shelf = signal<ShelfShown | { readonly problem: string } | undefined>(undefined);

/** What became of work on the shelf, for whoever looks at it: a dialog covers the notices. */
export const shelfTold = signal<Told | undefined>(undefined);

/** Pieces of work that wait for the one that is shown. */
export const shelfWaiting = signal(0);

/** What the map that last took another's place says otherwise of the drives opened before, for the vehicle of that time. */
export const mapChanges = signal<{ readonly vehicle: string; readonly drives: MapChanges['drives'] }>({
  vehicle: '',
  drives: [],
});
