import { DivIcon, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import { sayExtraShort } from '../../../geo/report/ways/say-way.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { toLatLng } from '../unit-square.ts';
import type { MapWay } from './shown-ways.ts';

/** The ways' numbers on the map, each with what it costs in time. The list says the same, so a screen reader hears none. */
export class WayTags {
  private readonly group = new LayerGroup();
  private readonly pane: string;
  private readonly raise: (index: number) => void;

  constructor(map: LeafletMap, pane: string, raise: (index: number) => void) {
    this.pane = pane;
    this.raise = raise;
    this.group.addTo(map);
  }

  show(ways: readonly MapWay[], units: Units): void {
    this.group.clearLayers();
    const brief = ways.length > TOLD;
    for (const [index, way] of ways.entries())
      this.group.addLayer(this.tag(way, { index, says: textsOf(way, { index, brief, units }) }));
  }

  private tag(
    { plate, raised }: MapWay,
    { index, says }: { index: number; says: readonly string[] },
  ): Marker {
    const tag = document.createElement('div');
    tag.className = raised ? 'way-tag way-tag-raised' : 'way-tag';
    tag.dataset['way'] = String(index + 1);
    for (const text of says) {
      const part = document.createElement('span');
      part.textContent = text;
      tag.append(part);
    }
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

/** Where more ways are shown, those that do not stand out tell their number alone. */
const TOLD = 3;

function textsOf(
  { way, raised }: MapWay,
  { index, brief, units }: { readonly index: number; readonly brief: boolean; readonly units: Units },
): string[] {
  const number = String(index + 1);
  return brief && !raised ? [number] : [number, sayExtraShort(way, units)[0]];
}
