import { signal } from '@preact/signals';

/** Long work under way: what, how far, and how to stop it. */
export interface Doing {
  readonly what: string;
  /** 0…1 where it is known */
  readonly share?: number;
  readonly secondsLeft?: number;
  stop(): void;
}

/** Opening a drive or a map: what is shown is about to change. */
export const work = signal<Doing | undefined>(undefined);

/** How many choices of a person are being carried out: between the pieces of work of one nothing else may begin. */
export const choosing = signal(0);

/** Work on the shelf: it goes on while the window is used. */
export const shelfWork = signal<Doing | undefined>(undefined);

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
