import { type Control, type Map as LeafletMap, TileLayer } from 'leaflet';
import { ZOOM_MAX } from '../../geo/basemap/features.ts';
import type { Settings } from '../../main/contract/settings.ts';

/** The user's own background picture from the network, in place of the base map. */
export class Background {
  private readonly map: LeafletMap;
  private readonly credit: Control.Attribution;
  private tiles: TileLayer | undefined;
  private credited: string | undefined;

  constructor(map: LeafletMap, credit: Control.Attribution) {
    this.map = map;
    this.credit = credit;
  }

  get isShown(): boolean {
    return this.tiles !== undefined;
  }

  show(wanted: Settings['tiles']): void {
    this.tiles?.remove();
    if (this.credited !== undefined) this.credit.removeAttribution(this.credited);
    this.tiles = undefined;
    this.credited = undefined;
    if (!wanted) return;
    this.tiles = new TileLayer(wanted.address, {
      pane: 'background',
      maxZoom: ZOOM_MAX + 1,
      maxNativeZoom: 19,
    });
    this.tiles.addTo(this.map);
    if (wanted.attribution === '') return;
    this.credited = escaped(wanted.attribution);
    this.credit.addAttribution(this.credited);
  }
}

/** The attribution is the user's own text, and Leaflet takes markup. */
function escaped(text: string): string {
  const element = document.createElement('span');
  element.textContent = text;
  return element.innerHTML;
}
