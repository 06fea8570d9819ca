import { DomUtil, Layer, type Map as LeafletMap, point } from 'leaflet';
import { densityNow, worldPx } from './pixels.ts';

/** How much more than is seen is drawn on every side, so that dragging shows no edge at once. */
const BEYOND = 0.12;

/** The canvas over the map as a drawing uses it. */
export interface MapCanvas {
  readonly ctx: CanvasRenderingContext2D;
  readonly zoom: number;
  /** pixels across the whole world */
  readonly world: number;
  /** from the unit square times `world` to the canvas's own pixels */
  readonly offsetX: number;
  readonly offsetY: number;
  readonly width: number;
  readonly height: number;
}

/** One canvas over all that is seen, drawn anew when the map comes to rest. */
export class CanvasLayer extends Layer {
  private readonly canvas = document.createElement('canvas');
  private readonly draw: (canvas: MapCanvas) => void;
  private readonly paneName: string;
  private pending = 0;
  private map: LeafletMap | undefined;

  constructor(paneName: string, draw: (canvas: MapCanvas) => void) {
    super();
    this.paneName = paneName;
    this.draw = draw;
    this.canvas.style.position = 'absolute';
    this.canvas.style.pointerEvents = 'none';
  }

  override onAdd(map: LeafletMap): this {
    this.map = map;
    map.getPane(this.paneName)?.append(this.canvas);
    this.drawNow();
    return this;
  }

  override onRemove(): this {
    cancelAnimationFrame(this.pending);
    this.canvas.remove();
    this.map = undefined;
    return this;
  }

  override getEvents() {
    const rest = () => this.drawNow();
    return { moveend: rest, resize: rest, viewreset: rest };
  }

  /** Draws at the next frame, however often asked before it. */
  drawSoon(): void {
    cancelAnimationFrame(this.pending);
    this.pending = requestAnimationFrame(() => this.drawNow());
  }

  drawNow(): void {
    cancelAnimationFrame(this.pending);
    const { map } = this;
    const ctx = this.canvas.getContext('2d');
    if (!map || !ctx) return;
    const size = map.getSize();
    const corner = map.containerPointToLayerPoint(point(-size.x * BEYOND, -size.y * BEYOND).round());
    const width = Math.ceil(size.x * (1 + 2 * BEYOND));
    const height = Math.ceil(size.y * (1 + 2 * BEYOND));
    const density = densityNow();
    resize(this.canvas, width, height, density);
    DomUtil.setPosition(this.canvas, corner);
    ctx.setTransform(density, 0, 0, density, 0, 0);
    ctx.clearRect(0, 0, width, height);
    const origin = map.getPixelOrigin().add(corner);
    const zoom = map.getZoom();
    this.draw({ ctx, zoom, world: worldPx(zoom), offsetX: -origin.x, offsetY: -origin.y, width, height });
  }
}

function resize(canvas: HTMLCanvasElement, width: number, height: number, density: number): void {
  const [across, down] = [Math.round(width * density), Math.round(height * density)];
  if (canvas.width === across && canvas.height === down) return;
  canvas.width = across;
  canvas.height = down;
  canvas.style.width = `${width}px`;
  canvas.style.height = `${height}px`;
}
