import { signal } from '@preact/signals';

/** Long work under way: what, how far, and how to stop it. */
export const work = signal<{ readonly what: string; readonly share?: number; stop(): void } | undefined>(
  undefined,
);

export interface Told {
  readonly kind: 'error' | 'note';
  readonly say: string;
  /** tries once more what could not be done */
  again?(): void;
  /** what can be done about it, each by the words on its button */
  readonly offers?: readonly Offer[];
}

export interface Offer {
  readonly say: string;
  act(): void;
}

/** Something went wrong or should be known; stays until it is closed. */
export const notice = signal<Told | undefined>(undefined);

/** Says something beside what is said already: neither hides the other. */
export function tellAlso(more: Told | undefined): void {
  const now = notice.peek();
  if (now === undefined || more === undefined) {
    notice.value = now ?? more;
    return;
  }
  const kind = now.kind === 'error' || more.kind === 'error' ? 'error' : 'note';
  const offers = [...(now.offers ?? []), ...(more.offers ?? [])];
  notice.value = { ...more, ...now, kind, say: `${now.say} ${more.say}`, offers };
}

/** The program behind the window has gone. */
export const hostGone = signal<string | undefined>(undefined);
