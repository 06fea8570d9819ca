import { DivIcon, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import { toLatLng } from '../unit-square.ts';
import type { MapWay } from './shown-ways.ts';

/**
 * The ways' numbers on the map, and no more, for more would cover what stops the drive there. The list tells them, so a
 * screen reader hears none.
 */
export class WayTags {
  private readonly group = new LayerGroup();
  private readonly pane: string;
  private readonly raise: (index: number) => void;

  constructor(map: LeafletMap, pane: string, raise: (index: number) => void) {
    this.pane = pane;
    this.raise = raise;
    this.group.addTo(map);
  }

  show(ways: readonly MapWay[]): void {
    this.group.clearLayers();
    for (const [index, way] of ways.entries()) this.group.addLayer(this.tag(way, index));
  }

  private tag({ plate, raised }: MapWay, index: number): Marker {
    const tag = document.createElement('div');
    tag.className = raised ? 'way-tag way-tag-raised' : 'way-tag';
    tag.textContent = tag.dataset['way'] = String(index + 1);
    const icon = new DivIcon({ html: tag, className: '', iconSize: [0, 0] });
    const marker = new Marker(toLatLng(plate.x, plate.y), {
      icon,
      keyboard: false,
      pane: this.pane,
      zIndexOffset: raised ? 30_000 : 20_000,
    });
    const raise = () => {
      if (!raised) this.raise(index);
    };
    return marker.on('mouseover', raise).on('click', raise);
  }
}
