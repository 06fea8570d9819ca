import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';

/** Over the map while a click on it means something: says what, does it in the middle for the keyboard, and ends it; so does Escape. */
export function ClickBanner({
  shown,
  say,
  onMiddle,
  onEnd,
  end,
}: {
  readonly shown: boolean;
  readonly say: string;
  onMiddle(): void;
  onEnd(): void;
  /** what the button that ends it says */
  readonly end: ComponentChildren;
}) {
  useEffect(() => {
    if (!shown) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.defaultPrevented) onEnd();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [shown]);
  if (!shown) return null;
  return (
    <div class="placing">
      <p>
        {say}
        <span class="small soft"> Esc ends.</span>
      </p>
      <button type="button" onClick={onMiddle}>
        Put it at the cross
      </button>
      <button type="button" onClick={onEnd}>
        {end}
      </button>
    </div>
  );
}
