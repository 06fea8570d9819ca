import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { firstTold } from '../state/first-told.ts';

/** What is not looked at when the window opens: its code is loaded when it is first shown, or before by `inIdleTime`. */
export function later<Props extends object = object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> {
  return function Later(props: Props) {
    const [Loaded, setLoaded] = useState<ComponentType<Props>>();
    useEffect(() => {
      void load().then((found) => setLoaded(() => found));
    }, []);
    return Loaded ? <Loaded {...props} /> : <p class="soft">One moment…</p>;
  };
}

/** Loads what is likely to be looked at soon, once the window has nothing else to do. @returns the way to give it up */
export function inIdleTime(loads: readonly (() => Promise<unknown>)[]): () => void {
  let waiting: number | undefined;
  let givenUp = false;
  void firstTold.then(() => {
    if (givenUp) return;
    waiting = requestIdleCallback(() => {
      for (const load of loads) void load();
    });
  });
  return () => {
    givenUp = true;
    if (waiting !== undefined) cancelIdleCallback(waiting);
  };
}
