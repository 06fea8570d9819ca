import { signal } from '@preact/signals';
import { clip } from '../../../geo/units/text.ts';
import { ask } from '../../host/ask.ts';
import type { ChosenPlace } from '../../plan/place-field.tsx';
import { tell } from './work.ts';
import { arrangement } from './yard.ts';

/** The place that drives are looked for about, and how far from it. */
export interface Near {
  readonly place: ChosenPlace;
  readonly radiusM: number;
  /** 0…1 while drives are looked through */
  readonly share?: number;
}
export const near = signal<Near | undefined>(undefined);

let looking: AbortController | undefined;

/** Shows the drives that come within so many metres of a place, whatever they do on the rest of their way. */
export async function lookNear(place: ChosenPlace, radiusM: number): Promise<void> {
  looking?.abort();
  const stop = new AbortController();
  looking = stop;
  near.value = { place, radiusM, share: 0 };
  const { lat, lon } = place;
  const reply = await ask(
    'drivesNear',
    { lat, lon, radiusM },
    {
      signal: stop.signal,
      onProgress: ({ share }) => {
        if (!stop.signal.aborted) near.value = { place, radiusM, share };
      },
    },
  );
  if (stop.signal.aborted) return;
  near.value = { place, radiusM };
  if (!reply.ok) return tell(reply.error.message, true);
  arrangement.value = { ...arrangement.peek(), near: new Set(reply.value.drives) };
  const { unread } = reply.value;
  if (unread.length > 0)
    tell(
      `Nobody can tell whether these come near: ${unread
        .slice(0, 3)
        .map((say) => clip(say, 200))
        .join(' ')}`,
      true,
    );
}

/** Drives are shown wherever they run. */
export function forgetNear(): void {
  looking?.abort();
  near.value = undefined;
  arrangement.value = { ...arrangement.peek(), near: undefined };
}

/** What lies in the library has changed. */
export function lookNearAgain(): void {
  const asked = near.peek();
  if (asked) void lookNear(asked.place, asked.radiusM);
}
