import { DivIcon, type Map as LeafletMap, Marker } from 'leaflet';
import { acrossM } from '../../geo/earth/mercator.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { worldPx } from './canvas/pixels.ts';
import type { PathPlace } from './drive/drive-path.ts';
import { toLatLng } from './unit-square.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Shorter than this on the screen, the vehicle is shown as an arrow. */
const OUTLINE_FROM_PX = 22;

/** Where the vehicle is: from near its outline to scale, front at the cursor; from afar an arrow. */
export class VehicleMarker {
  private readonly map: LeafletMap;
  private readonly svg = document.createElementNS(SVG, 'svg');
  private readonly body = document.createElementNS(SVG, 'path');
  private readonly windscreen = document.createElementNS(SVG, 'path');
  private readonly marker: Marker;

  constructor(map: LeafletMap, pane: string) {
    this.map = map;
    this.windscreen.setAttribute('class', 'windscreen');
    this.svg.append(this.body, this.windscreen);
    this.svg.setAttribute('width', '2');
    this.svg.setAttribute('height', '2');
    this.svg.style.overflow = 'visible';
    const box = document.createElement('div');
    box.append(this.svg);
    this.marker = new Marker([0, 0], {
      icon: new DivIcon({ html: box, className: 'map-vehicle', iconSize: [0, 0] }),
      keyboard: false,
      interactive: false,
      pane,
    });
  }

  show(place: PathPlace | undefined, card: VehicleCard | undefined): void {
    if (place === undefined) {
      this.marker.remove();
      return;
    }
    const at = toLatLng(place.x, place.y);
    this.marker.setLatLng(at).addTo(this.map);
    const metresPerPx = acrossM(at.lat) / worldPx(this.map.getZoom());
    const length = (card?.lengthM ?? 0) / metresPerPx;
    if (card === undefined || length < OUTLINE_FROM_PX) {
      this.body.setAttribute('d', 'M0-13 9 10 0 5-9 10z');
      this.windscreen.setAttribute('d', '');
    } else {
      const half = card.widthM / metresPerPx / 2;
      const mirror = card.widthMirrorsM / metresPerPx / 2;
      const glass = length * 0.1;
      this.body.setAttribute(
        'd',
        `M${-half} 0H${half}V${glass}H${mirror}V${glass * 1.5}H${half}V${length}H${-half}V${glass * 1.5}H${-mirror}V${glass}H${-half}z`,
      );
      const inner = half * 0.82;
      this.windscreen.setAttribute('d', `M${-inner} ${glass * 0.5}H${inner}V${glass * 1.1}H${-inner}z`);
    }
    this.svg.style.transformOrigin = '0 0';
    this.svg.style.transform = `rotate(${place.headingDeg.toFixed(1)}deg)`;
  }

  close(): void {
    this.marker.remove();
  }
}
