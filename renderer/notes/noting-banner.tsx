import { useEffect } from 'preact/hooks';
import { noting } from '../state/notes.ts';
import { noteAt } from './begin.ts';

/** Over the map while a click says where a note belongs; Escape lets it be. */
export function NotingBanner({ middle }: { middle(): { lat: number; lon: number } | undefined }) {
  const shown = noting.value;
  useEffect(() => {
    if (!shown) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.defaultPrevented) noting.value = false;
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [shown]);
  if (!shown) return null;
  return (
    <div class="placing">
      <p>
        Click the road where the note belongs.<span class="small soft"> Esc ends.</span>
      </p>
      <button
        type="button"
        onClick={() => {
          const at = middle();
          if (at) noteAt(at);
        }}
      >
        Put it at the cross
      </button>
      <button
        type="button"
        onClick={() => {
          noting.value = false;
        }}
      >
        Never mind
      </button>
    </div>
  );
}
