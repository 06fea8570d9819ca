import { effect } from '@preact/signals';
import { settings } from '../state/kept.ts';

/** Keeps the day or night palette on the page, as chosen or as the system has it. @returns the way to end it */
export function followPalette(root: HTMLElement, page: Window): () => void {
  const dark = page.matchMedia('(prefers-color-scheme: dark)');
  const apply = () => {
    const { palette } = settings.value;
    const night = palette === 'night' || (palette === 'system' && dark.matches);
    root.dataset['palette'] = night ? 'night' : 'day';
  };
  dark.addEventListener('change', apply);
  const end = effect(apply);
  return () => {
    end();
    dark.removeEventListener('change', apply);
  };
}
