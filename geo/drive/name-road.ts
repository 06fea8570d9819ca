import { given } from '../given.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import type { Roads } from '../roads/roads.ts';

/** What a driven way is called: its class as mapped, with name and number where it has them. */
export function nameRoad(
  roads: Roads,
  way: number,
): { readonly class: string; readonly name?: string; readonly ref?: string } {
  const tags = mappedOn(roads, way);
  return {
    class: tags['highway'] ?? (tags['route'] === 'ferry' ? 'ferry' : 'unknown'),
    ...given({ name: tags['name'], ref: tags['ref'] }),
  };
}
