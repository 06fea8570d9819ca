import { description } from '../state/kept.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { OWN_DRIVES } from './own-drives.ts';

/** Beside the sample's verdict; until there is a map of the user's own, with where those of real drives come from. */
export function Invented() {
  const hasMap = mapsOnShelf.value > 0 || description.value?.recents.some(({ use }) => use === 'map');
  return hasMap ? (
    <>The district is invented.</>
  ) : (
    <>The district is invented and comes with its own map. {OWN_DRIVES}</>
  );
}
