import { DivIcon, type LatLng, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import type { Taken } from '../labels/place-labels.ts';
import { toLatLng } from '../unit-square.ts';
import { clearPlace, coveredPx } from './clear-place.ts';
import type { MapWay } from './shown-ways.ts';

/** Half of a number's plate, and a little room. Pixels. */
const HALF_PX = 14;

/**
 * The ways' numbers on the map, and no more, for more would cover what stops the drive there. The list tells them, so a
 * screen reader hears none.
 */
export class WayTags {
  private readonly group = new LayerGroup();
  private readonly pane: string;
  private readonly raise: (index: number) => void;
  private readonly map: LeafletMap;
  private ways: readonly MapWay[] = [];
  private boxes: Taken[] = [];

  constructor(map: LeafletMap, pane: string, raise: (index: number) => void) {
    this.pane = pane;
    this.raise = raise;
    this.map = map;
    this.group.addTo(map);
  }

  show(ways: readonly MapWay[]): void {
    this.ways = ways;
  }

  /**
   * Places the numbers for the zoom of now, first those that have least choice.
   * @param taken what they are to keep clear of, in the map's own pixels
   */
  arrange(taken: readonly Taken[]): void {
    this.group.clearLayers();
    this.boxes = [];
    const tags = this.ways.map(({ plates, raised }, index) => {
      const places = plates.map(({ x, y }) => {
        const at = toLatLng(x, y);
        const { x: xPx, y: yPx } = this.map.project(at);
        return { at, x: xPx, y: yPx };
      });
      return {
        index,
        raised,
        places,
        free: places.filter((at) => coveredPx(at, taken, HALF_PX) === 0).length,
      };
    });
    for (const { index, raised, places } of tags.sort((a, b) => a.free - b.free)) {
      const place = clearPlace(places, [...taken, ...this.boxes], HALF_PX);
      if (!place) continue;
      this.boxes.push({ x: place.x, y: place.y, halfWidth: HALF_PX, halfHeight: HALF_PX });
      this.group.addLayer(this.tag(place.at, index, raised));
    }
  }

  /** What the numbers cover, for texts to keep clear of. @param offset from the map's own pixels */
  taken({ offsetX, offsetY }: { readonly offsetX: number; readonly offsetY: number }): Taken[] {
    return this.boxes.map((box) => ({ ...box, x: box.x + offsetX, y: box.y + offsetY }));
  }

  private tag(at: LatLng, index: number, raised: boolean): Marker {
    const tag = document.createElement('div');
    tag.className = raised ? 'way-tag way-tag-raised' : 'way-tag';
    tag.textContent = tag.dataset['way'] = String(index + 1);
    const icon = new DivIcon({ html: tag, className: '', iconSize: [0, 0] });
    const marker = new Marker(at, {
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
