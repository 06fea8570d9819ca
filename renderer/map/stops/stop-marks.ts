import { DivIcon, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import type { StopTimes } from '../../../geo/report/day.ts';
import { clip } from '../../../geo/units/text.ts';

/** The day's stops as knots on the drive. The list under the leave time says and does the same for the keyboard. */
export class StopMarks {
  private readonly group = new LayerGroup();
  private readonly pane: string;

  constructor(map: LeafletMap, pane: string) {
    this.pane = pane;
    this.group.addTo(map);
  }

  show(stops: readonly StopTimes[]): void {
    this.group.clearLayers();
    for (const { lat, lon, name } of stops) {
      const icon = new DivIcon({ html: '', className: 'map-stop', iconSize: [SIDE_PX, SIDE_PX] });
      const text = document.createElement('div');
      text.textContent = clip(name, 80);
      const mark = new Marker([lat, lon], { icon, keyboard: false, pane: this.pane, zIndexOffset: -500 });
      this.group.addLayer(mark.bindTooltip(text, { direction: 'top', className: 'mark-names', opacity: 1 }));
    }
  }
}

const SIDE_PX = 18;
