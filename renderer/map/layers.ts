import type { LatLngBounds, Map as LeafletMap } from 'leaflet';
import type { Finding } from '../../geo/report/report.ts';
import type { Units } from '../../geo/units/in-units.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import { Background } from './background.ts';
import { BaseLayer } from './base-layer.ts';
import { CanvasLayer, type MapCanvas } from './canvas/canvas-layer.ts';
import { type Palette, readPalette } from './canvas/palette.ts';
import { worldPx } from './canvas/pixels.ts';
import { createMap } from './create-map.ts';
import { coveredByDrive } from './drive/covered-by-drive.ts';
import { drawDrive } from './drive/draw-drive.ts';
import { type DrivePath, placeOnPath } from './drive/drive-path.ts';
import { EndMarks } from './drive/end-marks.ts';
import { drawLabels } from './labels/draw-labels.ts';
import type { Taken } from './labels/place-labels.ts';
import { MarkLayer } from './marks/mark-layer.ts';
import { NoteMarks } from './notes/note-marks.ts';
import { PlaceMarks } from './places/place-marks.ts';
import { StopMarks } from './stops/stop-marks.ts';
import type { AskTile } from './tile-queue.ts';
import { VehicleMarker } from './vehicle-marker.ts';
import { drawWays } from './ways/draw-ways.ts';
import type { MapWay } from './ways/shown-ways.ts';
import { WayTags } from './ways/way-tags.ts';

/** What the map shows now. The steps of mount-map.ts change it, the layers draw it. */
export interface Shown {
  palette: Palette;
  drive: FollowedDrive | undefined;
  path: DrivePath | undefined;
  /** of the open map's roads */
  mapBounds: LatLngBounds | undefined;
  findings: readonly Finding[];
  selected: Finding | undefined;
  /** ways round that are shown */
  ways: readonly MapWay[];
  /** the whole drive is looked at, and nobody has moved the map since */
  whole: boolean;
  units: Units;
  cursorM: number;
  card: VehicleCard | undefined;
}

/** The map with all that is laid on it, from below: base or background, drive, texts, vehicle, marks. */
export interface Layers {
  readonly map: LeafletMap;
  readonly base: BaseLayer;
  readonly background: Background;
  readonly line: CanvasLayer;
  readonly texts: CanvasLayer;
  readonly vehicle: VehicleMarker;
  readonly ends: EndMarks;
  readonly marks: MarkLayer;
  readonly wayMarks: MarkLayer;
  readonly wayTags: WayTags;
  readonly places: PlaceMarks;
  readonly notes: NoteMarks;
  readonly stops: StopMarks;
  close(): void;
}

export function nothingShown(element: HTMLElement): Shown {
  return {
    palette: readPalette(element),
    drive: undefined,
    path: undefined,
    mapBounds: undefined,
    findings: [],
    selected: undefined,
    ways: [],
    whole: false,
    units: 'metric',
    cursorM: 0,
    card: undefined,
  };
}

/** What the layers ask, and what is done on them. */
interface LayerEvents {
  readonly ask: AskTile;
  /** the mark of a finding was chosen */
  choose(id: string): void;
  /** the pointer came to the mark of a finding, or left it */
  hover(id: string | undefined): void;
  /** a way round is looked at, by its place among those shown */
  raiseWay(index: number): void;
  /** a note is to be looked at */
  openNote(id: string): void;
  /** a place of the plan was dragged */
  movePlace(key: number, to: { readonly lat: number; readonly lon: number }): void;
}

export function createLayers(element: HTMLElement, shown: Shown, { ask, ...events }: LayerEvents): Layers {
  const { map, credit } = createMap(element);
  const background = new Background(map, credit);
  const marks = new MarkLayer(map, 'marks', events);
  const wayMarks = new MarkLayer(map, 'marks', { choose() {}, hover() {} });
  const wayTags = new WayTags(map, 'marks', events.raiseWay);
  const places = new PlaceMarks(map, 'marks', { move: events.movePlace });
  const notes = new NoteMarks(map, 'marks', events.openNote);
  const stops = new StopMarks(map, 'marks');
  const ends = new EndMarks(map, 'ends');
  const vehicle = new VehicleMarker(map, 'vehicle');
  const textsLater = everySoOften(() => texts.drawNow());
  const base = new BaseLayer({ ask, palette: () => shown.palette, onLabels: textsLater.ask });
  const texts = new CanvasLayer('texts', (canvas) => {
    if (!background.isShown)
      drawLabels(
        canvas,
        base.featuresAt(canvas.zoom),
        shown.palette,
        takenOn(canvas, shown, { marks, ends, wayTags }),
      );
  });
  const line = new CanvasLayer('drive', (canvas) => {
    const { drive, path, findings, selected, palette, ways } = shown;
    if (!path || !drive) return;
    const leftOut = ways.filter(({ raised }) => raised).map(({ way }) => way);
    drawDrive(canvas, { drive, path, findings, selectedId: selected?.id, leftOut }, palette);
    drawWays(canvas, ways, palette);
  });
  line.addTo(map);
  texts.addTo(map);
  return {
    map,
    base,
    background,
    line,
    texts,
    vehicle,
    ends,
    marks,
    wayMarks,
    wayTags,
    places,
    notes,
    stops,
    close() {
      textsLater.stop();
      base.close();
      vehicle.close();
      map.remove();
    },
  };
}

/** What is drawn over the texts' canvas, for texts to keep clear of. */
function takenOn(
  canvas: MapCanvas,
  { path }: Shown,
  { marks, ends, wayTags }: Pick<Layers, 'marks' | 'ends' | 'wayTags'>,
): Taken[] {
  return [
    ...marks.taken(canvas),
    ...wayTags.taken(canvas),
    ...ends.taken(canvas),
    ...(path ? coveredByDrive(canvas, path) : []),
  ];
}

/** Puts the ways' numbers where they cover no mark. */
export function placeTags({ map, marks, wayMarks, ends, wayTags }: Layers): void {
  const inMap = { world: worldPx(map.getZoom()), offsetX: 0, offsetY: 0 };
  wayTags.arrange([marks, wayMarks, ends].flatMap((each) => each.taken(inMap)));
}

/** Puts the vehicle where the cursor is. */
export function placeVehicle({ vehicle }: Layers, { path, cursorM, card }: Shown): void {
  vehicle.show(path && placeOnPath(path, cursorM), card);
}

const TEXTS_EVERY_MS = 150;

/** Tiles come in one by one: their texts are placed a few times on the way, not at each. */
function everySoOften(act: () => void): { ask(): void; stop(): void } {
  let due: ReturnType<typeof setTimeout> | undefined;
  return {
    ask() {
      due ??= setTimeout(() => {
        due = undefined;
        act();
      }, TEXTS_EVERY_MS);
    },
    stop: () => clearTimeout(due),
  };
}
