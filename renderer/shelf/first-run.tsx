import { description } from '../state/kept.ts';
import { mapIsInvented, openedDrive } from '../state/opened.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { OWN_DRIVES } from './own-drives.ts';

/** Beside the sample's verdict, until there is a map of the user's own: where the maps of real drives come from. */
export function FirstRun() {
  const hasMap = mapsOnShelf.value > 0 || description.value?.recents.some(({ use }) => use === 'map');
  if (hasMap || !mapIsInvented.value || openedDrive.value?.source.kind !== 'sample') return null;
  return (
    <p class="first-run small">
      This district is invented and comes with its own map. {OWN_DRIVES}
    </p>
  );
}
