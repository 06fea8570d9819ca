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
  /** what can be done about it, by the words on its button */
  readonly offer?: { readonly say: string; act(): void };
}

/** Something went wrong or should be known; stays until it is closed. */
export const notice = signal<Told | undefined>(undefined);

/** The program behind the window has gone. */
export const hostGone = signal<string | undefined>(undefined);
