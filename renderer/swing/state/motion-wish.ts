import { signal } from '@preact/signals';

/** The system asks for less motion: the fan of positions stands still, and playing steps from place to place. */
export const lessMotion = signal(false);

/** @returns the way to end it */
export function followMotionWish(page: Window): () => void {
  const wish = page.matchMedia('(prefers-reduced-motion: reduce)');
  const take = () => {
    lessMotion.value = wish.matches;
  };
  take();
  wish.addEventListener('change', take);
  return () => wish.removeEventListener('change', take);
}
