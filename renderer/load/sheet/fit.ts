/** How tightly the page is set. */
export type Fit = 'easy' | 'long' | 'longest';

/** From so many items and sentences on, the table stands in two columns of small print. */
const LONG = 10;
/** From so many items on in smaller print still. */
const LONGEST = 36;

/** How tightly so many items and sentences are set, so that the page is one. */
export function fitOf(items: number, sentences: number): Fit {
  if (items > LONGEST) return 'longest';
  return items + sentences > LONG ? 'long' : 'easy';
}
