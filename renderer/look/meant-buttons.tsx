import type { Meant } from '../../geo/units/decimal-feet.ts';

/**
 * Takes what was likely meant by a figure that cannot be right: `3.05 m?` Nothing where nothing is likely. The Tab key
 * passes it by, so that nobody takes a guess on the way to the next field; what to type instead stands beside it.
 */
export function MeantButtons({ of, take }: { of: readonly Meant[]; take(text: string): void }) {
  return of.map(({ text, says }) => (
    <button
      key={text}
      type="button"
      class="meant"
      tabIndex={-1}
      // the field is not left by pressing it: what is typed stands until it is replaced
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => take(text)}
    >
      {says}?
    </button>
  ));
}
