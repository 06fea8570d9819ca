import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** What is seldom looked at: its code is loaded when it is first shown, not with the window. */
export function later(load: () => Promise<ComponentType>): ComponentType {
  return function Later() {
    const [Loaded, setLoaded] = useState<ComponentType>();
    useEffect(() => {
      void load().then((found) => setLoaded(() => found));
    }, []);
    return Loaded ? <Loaded /> : <p class="soft">One moment…</p>;
  };
}
