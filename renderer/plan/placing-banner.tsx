import { useEffect } from 'preact/hooks';
import { shownPart } from '../state/parts.ts';
import { places, placing, plan } from '../state/plan.ts';

/** Over the map while a click puts a place: says so, puts one in the middle for the keyboard, and ends it; so does Escape. */
export function PlacingBanner({ onMiddle }: { onMiddle(): void }) {
  const shown = plan.value !== undefined && placing.value;
  useEffect(() => {
    if (!shown) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.defaultPrevented) end();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [shown]);
  if (!shown) return null;
  return (
    <div class="placing">
      <p>
        Click the map to put place {places.value.length + 1}.<span class="small soft"> Esc ends.</span>
      </p>
      <button type="button" onClick={onMiddle}>
        Put it at the cross
      </button>
      <button type="button" onClick={end}>
        Done<span class="unseen"> putting places</span>
      </button>
    </div>
  );
}

function end(): void {
  placing.value = false;
  shownPart.value = 'list';
}
