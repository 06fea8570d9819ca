import { type Painted, type PaintOrder, paintedSide } from './paint-order.ts';
import { paintTile } from './paint-tile.ts';

let canvas: OffscreenCanvas | undefined;

self.addEventListener('message', ({ data }: MessageEvent<PaintOrder>) => {
  const { id, tile, palette, density } = data;
  const side = paintedSide(density);
  if (canvas?.width !== side) canvas = new OffscreenCanvas(side, side);
  const ctx = canvas.getContext('2d', { alpha: false });
  if (!ctx) return;
  paintTile(ctx, tile, palette, density);
  const picture = canvas.transferToImageBitmap();
  self.postMessage({ id, picture } satisfies Painted, { transfer: [picture] });
});
