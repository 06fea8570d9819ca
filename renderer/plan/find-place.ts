import { given } from '../../geo/given.ts';
import { readPlaceText } from '../../geo/units/read-place.ts';
import { clip } from '../../geo/units/text.ts';
import type { ValueOf } from '../../main/contract/calls.ts';
import { ask } from '../host/ask.ts';
import { openedMap } from '../state/opened.ts';
import { places } from '../state/plan.ts';

export type FoundPlace = ValueOf<'findPlaces'>['places'][number];

/** What a typed text comes to: coordinates, places of that name, or why neither. */
export type Typed =
  | { readonly kind: 'coordinates'; readonly lat: number; readonly lon: number }
  | {
      readonly kind: 'places';
      readonly places: readonly FoundPlace[];
      readonly exact: number;
      readonly notSearched?: string | undefined;
    }
  | { readonly kind: 'problem'; readonly say: string };

const LONGEST = 100;

/** Reads what was typed; names are looked up among the maps. @returns undefined where it was overtaken or empty */
export async function findTyped(text: string, signal: AbortSignal): Promise<Typed | undefined> {
  const wanted = text.trim().slice(0, LONGEST);
  if (wanted === '') return undefined;
  const typed = readPlaceText(wanted, openedMap.peek()?.summary.bounds ?? undefined);
  if (typed)
    return 'problem' in typed ? { kind: 'problem', say: typed.problem } : { kind: 'coordinates', ...typed };
  const last = places.peek().at(-1);
  const near = last && { lat: last.lat, lon: last.lon };
  const reply = await ask('findPlaces', { text: wanted, ...given({ near }) }, { signal });
  if (signal.aborted) return undefined;
  if (!reply.ok) return { kind: 'problem', say: reply.error.message };
  if (reply.value.places.length === 0)
    return {
      kind: 'problem',
      say: [
        reply.value.notSearched,
        `No place or road ${reply.value.notSearched === undefined ? '' : 'that can be read '}on the open map or your shelf is called “${wanted}”.${askMeant(reply.value.meant)} Coordinates do, too: 54.1, 9.2.`,
      ]
        .filter((say) => say !== undefined)
        .join(' '),
    };
  return { kind: 'places', ...reply.value };
}

function askMeant(names: readonly string[] = []): string {
  return names.length === 0 ? '' : ` Did you mean ${names.map((name) => clip(name, 60)).join(' or ')}?`;
}
