import type { Problem } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import type { OpenShelf } from './open-shelf.ts';

/** Names of maps of which something could not be read. */
export type Lacking = Pick<OpenShelf, 'damaged' | 'forbidden'>;

export function sayDamaged(map: string): string {
  return `The map ${quote(map)} is damaged: what cannot be read of it is left out, with the roads and limits there.`;
}

export function sayForbidden(map: string): string {
  return `The map ${quote(map)} may not be read by this user: its roads and limits are left out. ${ALLOW}`;
}

const MEND = 'Mend it under Shelf, or with: lanegauge shelf verify --repair';
const ALLOW = 'Let the shelf’s folder be read, or import the map again.';

/** A problem that may come of what could not be read: that is said first. */
export function afterLacking({ code, message }: Problem, { damaged, forbidden }: Lacking): Problem {
  const lost = damaged.length === 0 ? [] : [...damaged.map(sayDamaged), `${MEND}.`];
  const lacking = [...lost, ...forbidden.map(sayForbidden)];
  return { code, message: [...lacking, message].join(' ') };
}

/** Which maps names were not all looked up in, and what else is not known of them; undefined where all were. */
export function sayNotSearched({ damaged, forbidden }: Lacking): string | undefined {
  const said = [
    ...sayEach(damaged, 'damaged', `${MEND}.`),
    ...sayEach(forbidden, 'not for this user to read', ALLOW),
  ];
  return said.length === 0 ? undefined : said.join(' ');
}

function sayEach(maps: readonly string[], so: string, mend: string): string[] {
  if (maps.length === 0) return [];
  const which = `${maps.length === 1 ? 'The map' : 'The maps'} ${listed(maps.map((map) => quote(map)))}`;
  return [
    `${which} ${maps.length === 1 ? 'is' : 'are'} ${so}: names, roads and limits that cannot be read there are not known, and were not searched. ${mend}`,
  ];
}
