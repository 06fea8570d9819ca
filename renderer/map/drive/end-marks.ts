import { DivIcon, LayerGroup, type Map as LeafletMap, Marker } from 'leaflet';
import type { Taken } from '../labels/place-labels.ts';
import { toLatLng } from '../unit-square.ts';
import { type DrivePath, type PathPlace, placeOnPath } from './drive-path.ts';

/** Ends nearer to each other on the screen are marked once. */
const APART_PX = 26;
/** About what a letter of the words takes, and what stands about them. Pixels. */
const LETTER_PX = 7.5;
const PAD_PX = 26;
const HALF_HEIGHT_PX = 11;

/** Where the drive starts and finishes: a ring each, with the word on the side where the line does not run. */
export class EndMarks {
  private readonly map: LeafletMap;
  private readonly pane: string;
  private readonly group = new LayerGroup();
  private path: DrivePath | undefined;
  private shown: readonly { readonly place: PathPlace; readonly say: string; readonly left: boolean }[] = [];

  constructor(map: LeafletMap, pane: string) {
    this.map = map;
    this.pane = pane;
    this.group.addTo(map);
  }

  show(path: DrivePath | undefined): void {
    this.path = path;
    this.arrange();
  }

  /** Places the words for the zoom of now. */
  arrange(): void {
    this.group.clearLayers();
    this.shown = [];
    const start = this.path && placeOnPath(this.path, 0);
    const finish = this.path && placeOnPath(this.path, this.path.lengthM);
    if (!start || !finish) return;
    const at = (place: PathPlace) => this.map.project(toLatLng(place.x, place.y));
    const together = at(start).distanceTo(at(finish)) < APART_PX;
    const eastward = ({ headingDeg }: PathPlace) => ((headingDeg % 360) + 360) % 360 < 180;
    this.shown = together
      ? [{ place: start, say: 'Start and finish', left: eastward(start) }]
      : [
          { place: start, say: 'Start', left: eastward(start) },
          { place: finish, say: 'Finish', left: !eastward(finish) },
        ];
    for (const { place, say, left } of this.shown) {
      const word = document.createElement('span');
      word.textContent = say;
      const icon = new DivIcon({
        html: word,
        className: `map-end${left ? ' map-end-left' : ''}`,
        iconSize: [0, 0],
      });
      this.group.addLayer(
        new Marker(toLatLng(place.x, place.y), {
          icon,
          keyboard: false,
          interactive: false,
          pane: this.pane,
        }),
      );
    }
  }

  /** What the words cover, for the map's own texts to keep clear of. @param offset from the unit square times `world` */
  taken(offset: { readonly world: number; readonly offsetX: number; readonly offsetY: number }): Taken[] {
    return this.shown.map(({ place, say, left }) => {
      const halfWidth = (say.length * LETTER_PX + PAD_PX) / 2;
      return {
        x: place.x * offset.world + offset.offsetX + (left ? -halfWidth : halfWidth),
        y: place.y * offset.world + offset.offsetY,
        halfWidth,
        halfHeight: HALF_HEIGHT_PX,
      };
    });
  }
}
