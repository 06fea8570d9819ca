import { ClickBanner } from '../look/click-banner.tsx';
import { noting } from '../state/notes.ts';
import { noteAt } from './begin.ts';

/** Over the map while a click says where a note belongs. */
export function NotingBanner({ middle }: { middle(): { lat: number; lon: number } | undefined }) {
  return (
    <ClickBanner
      shown={noting.value}
      say="Click the road where the note belongs."
      onMiddle={() => {
        const at = middle();
        if (at) noteAt(at);
      }}
      onEnd={() => {
        noting.value = false;
      }}
      end="Never mind"
    />
  );
}
