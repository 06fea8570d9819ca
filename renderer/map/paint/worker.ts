import { paintTile } from './paint-tile.ts';
import { type Painted, type PaintOrder, paintedSide } from './painter.ts';

let sheet: OffscreenCanvas | undefined;

self.addEventListener('message', ({ data }: MessageEvent<PaintOrder>) => {
  const { id, tile, palette, density } = data;
  const side = paintedSide(density);
  if (sheet?.width !== side) sheet = new OffscreenCanvas(side, side);
  const ctx = sheet.getContext('2d', { alpha: false });
  if (!ctx) return;
  paintTile(ctx, tile, palette, density);
  const picture = sheet.transferToImageBitmap();
  self.postMessage({ id, picture } satisfies Painted, { transfer: [picture] });
});
