import { type Coords, type DoneCallback, GridLayer } from 'leaflet';
import { TILE_PX, type TileFeatures, ZOOM_MAX } from '../../geo/basemap/features.ts';
import { firstTold } from '../state/first-told.ts';
import type { Palette } from './canvas/palette.ts';
import { densityNow } from './canvas/pixels.ts';
import { paintedSide } from './paint/paint-order.ts';
import { createPainter } from './paint/painter.ts';
import { type AskTile, createTileQueue } from './tile-queue.ts';

interface ShownTile {
  readonly canvas: HTMLCanvasElement;
  readonly zoom: number;
  features: TileFeatures | undefined;
}

interface BaseLayerOptions {
  readonly ask: AskTile;
  palette(): Palette;
  /** the texts of the tiles have changed */
  onLabels(): void;
}

/** Our own base map: tiles asked of the host, painted away from the page's thread. */
export class BaseLayer extends GridLayer {
  private readonly source: BaseLayerOptions;
  private readonly painter = createPainter();
  private readonly queue;
  private readonly shown = new Map<HTMLElement, ShownTile>();

  constructor(source: BaseLayerOptions) {
    super({
      tileSize: TILE_PX,
      minZoom: 1,
      maxZoom: ZOOM_MAX + 1,
      keepBuffer: 1,
      updateWhenZooming: false,
      updateWhenIdle: false,
      updateInterval: 100,
      noWrap: true,
    });
    this.source = source;
    this.queue = createTileQueue(source.ask, firstTold);
    this.on('tileunload', ({ tile }) => {
      this.queue.drop(tile);
      this.shown.delete(tile);
    });
  }

  // Leaflet's own hook
  protected override createTile({ x, y, z }: Coords, done: DoneCallback): HTMLElement {
    const canvas = document.createElement('canvas');
    const density = densityNow();
    canvas.width = canvas.height = paintedSide(density);
    const shown: ShownTile = { canvas, zoom: z, features: undefined };
    this.shown.set(canvas, shown);
    this.queue.ask(canvas, { z: z - 1, x, y }, (features) => {
      shown.features = features;
      void this.paint(shown).then(() => done(undefined, canvas));
    });
    return canvas;
  }

  /** Paints what is shown once more, in the palette of now. */
  repaint(): void {
    for (const shown of this.shown.values()) void this.paint(shown);
  }

  /** The tiles whose texts may be drawn at a zoom. */
  *featuresAt(zoom: number): Generator<TileFeatures> {
    for (const { features, zoom: own } of this.shown.values())
      if (own === zoom && features !== undefined) yield features;
  }

  close(): void {
    this.remove();
    this.queue.close();
    this.painter.close();
  }

  private async paint({ canvas, features }: ShownTile): Promise<void> {
    if (features === undefined) return;
    const picture = await this.painter.paint(features, this.source.palette(), densityNow());
    if (!picture || !this.shown.has(canvas)) return;
    canvas.getContext('bitmaprenderer')?.transferFromImageBitmap(picture);
    this.source.onLabels();
  }
}
