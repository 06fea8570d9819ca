import { DivIcon, LatLngBounds, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import type { PlanPlace } from '../../state/plan.ts';

interface PlaceEvents {
  move(key: number, to: { readonly lat: number; readonly lon: number }): void;
}

/** The places of a plan as numbered flags that can be dragged. The list beside the map says and does the same. */
export class PlaceMarks {
  private readonly map: LeafletMap;
  private readonly pane: string;
  private readonly events: PlaceEvents;
  private readonly group = new LayerGroup();

  constructor(map: LeafletMap, pane: string, events: PlaceEvents) {
    this.map = map;
    this.pane = pane;
    this.events = events;
    this.group.addTo(map);
  }

  show(places: readonly PlanPlace[]): void {
    this.group.clearLayers();
    for (const [at, place] of places.entries()) this.group.addLayer(this.mark(place, at, places.length));
    this.bringIntoView(places);
  }

  private mark({ key, lat, lon, stop }: PlanPlace, at: number, count: number): Marker {
    const flag = document.createElement('span');
    flag.className = stop || at === 0 || at === count - 1 ? 'plan-number' : 'plan-number plan-through';
    flag.textContent = String(at + 1);
    const icon = new DivIcon({ html: flag, className: 'map-place', iconSize: [0, 0] });
    const mark = new Marker([lat, lon], {
      icon,
      draggable: true,
      keyboard: false,
      pane: this.pane,
      zIndexOffset: 40_000,
    });
    return mark.on('dragend', () => {
      const { lat: toLat, lng } = mark.getLatLng().wrap();
      this.events.move(key, { lat: toLat, lon: lng });
    });
  }

  /** A place by name may lie anywhere: all are looked at where one is out of sight. */
  private bringIntoView(places: readonly PlanPlace[]): void {
    const bounds = new LatLngBounds(places.map(({ lat, lon }) => [lat, lon]));
    if (bounds.isValid() && !this.map.getBounds().contains(bounds))
      this.map.fitBounds(bounds, { padding: [60, 60], maxZoom: 15, animate: false });
  }
}
