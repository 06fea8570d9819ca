import type { TileFeatures } from '../../../geo/basemap/features.ts';
import type { Palette } from '../canvas/palette.ts';
import type { Painted, PaintOrder } from './paint-order.ts';

/** Paints tiles away from the page's own thread. */
interface Painter {
  /** @returns undefined when the painter was closed meanwhile */
  paint(tile: TileFeatures, palette: Palette, density: number): Promise<ImageBitmap | undefined>;
  close(): void;
}

export function createPainter(): Painter {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, (picture: ImageBitmap | undefined) => void>();
  let nextId = 1;
  worker.addEventListener('message', ({ data }: MessageEvent<Painted>) => {
    waiting.get(data.id)?.(data.picture);
    waiting.delete(data.id);
  });
  const giveUp = () => {
    for (const settle of waiting.values()) settle(undefined);
    waiting.clear();
  };
  worker.addEventListener('error', giveUp);
  return {
    paint: (tile, palette, density) =>
      new Promise((resolve) => {
        const id = nextId++;
        waiting.set(id, resolve);
        worker.postMessage({ id, tile, palette, density } satisfies PaintOrder);
      }),
    close() {
      worker.terminate();
      giveUp();
    },
  };
}
