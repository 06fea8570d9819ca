import type { Meant } from '../../../geo/units/meant-entry.ts';

/** Takes what was likely meant by a figure that cannot be right: `3.05 m?` Nothing where nothing is likely. */
export function MeantButton({ of, take }: { of: Meant | undefined; take(text: string): void }) {
  if (of === undefined) return null;
  return (
    <button
      type="button"
      class="meant"
      // the field is not left by pressing it: what is typed stands until it is replaced
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => take(of.text)}
    >
      {of.says}?
    </button>
  );
}
