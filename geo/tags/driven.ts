import type { Tags } from '../roads/roads.ts';

/** A direction along the order in which a way is drawn, as keys of tags name it. */
export type Direction = 'forward' | 'backward';

/** What is tagged on a way or a node, and which way it is driven along the way's drawn order. */
export interface Driven {
  readonly tags: Tags;
  readonly forward: boolean;
}

/** The driven direction, as keys of tags name it. */
export function directionOf({ forward }: Pick<Driven, 'forward'>): Direction {
  return forward ? 'forward' : 'backward';
}
