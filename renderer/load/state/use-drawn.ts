import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';

interface Drawn<T> {
  readonly of: T;
  readonly element: JSX.Element;
}

/**
 * One element for each thing of a list; one that is the same as before is not drawn anew, so that a list of hundreds
 * stays quick to type in.
 * @param rest whatever else the drawing goes by: where any of it changes, all is drawn anew
 */
export function useDrawn<T>(
  things: readonly T[],
  same: (a: T, b: T) => boolean,
  rest: readonly unknown[],
  draw: (thing: T, index: number) => JSX.Element,
): readonly JSX.Element[] {
  const last = useRef<{ readonly rest: readonly unknown[]; readonly drawn: readonly Drawn<T>[] } | undefined>(
    undefined,
  );
  const kept = last.current?.rest.every((each, i) => each === rest[i]) ? last.current.drawn : [];
  const drawn = things.map((thing, index): Drawn<T> => {
    const before = kept[index];
    if (before !== undefined && same(before.of, thing)) return before;
    return { of: thing, element: draw(thing, index) };
  });
  last.current = { rest, drawn };
  return drawn.map(({ element }) => element);
}
