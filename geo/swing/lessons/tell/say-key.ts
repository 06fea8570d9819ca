import { shortIn, type Units } from '../../../units/in-units.ts';
import type { Key } from '../read/keys.ts';
import { sayWay } from './lengths.ts';
import { sayRole } from './say-part.ts';

/** A figure of a drawing, as it stands beside its number: what it is, and how much. */
export function sayKey(key: Key, units: Units): { readonly what: string; readonly figure: string } {
  switch (key.what) {
    case 'start gap':
      return {
        what: key.beside ? `starts this far from ${sayRole(key.beside)}` : 'gap at the start',
        figure: shortIn(units, key.m, 'down'),
      };
    case 'swing':
      return { what: `${key.end} farthest out on the whole way`, figure: shortIn(units, key.m, 'up') };
    case 'cut-in':
      return { what: 'inner rear wheel inside the front one’s track', figure: shortIn(units, key.m, 'up') };
    case 'touch':
      return { what: `touches ${sayRole(key.fixture)}, from the start`, figure: sayWay(units, key.m) };
    case 'nearest':
      return { what: `nearest to ${sayRole(key.fixture)}`, figure: shortIn(units, key.m, 'down') };
  }
}
