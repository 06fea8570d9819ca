import { Control, type LatLng, type LeafletMouseEvent } from 'leaflet';
import { mercatorX, mercatorY } from '../../geo/earth/mercator.ts';
import type { Place } from '../../geo/earth/sphere.ts';
import type { StopTimes } from '../../geo/report/day.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import type { Units } from '../../geo/units/in-units.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../main/contract/map-summary.ts';
import type { KeptNote } from '../../main/contract/note-calls.ts';
import type { Settings } from '../../main/contract/settings.ts';
import type { PlanPlace } from '../state/plan.ts';
import { onPaletteChange, readPalette } from './canvas/palette.ts';
import { worldPx } from './canvas/pixels.ts';
import { drivePath, nearestM, placeOnPath } from './drive/drive-path.ts';
import { followPointer } from './follow-pointer.ts';
import { forgetWidths } from './labels/draw-labels.ts';
import { createLayers, type Layers, nothingShown, placeTags, placeVehicle, type Shown } from './layers.ts';
import { boundsOf, firstLook, keepWithin, lookAt, lookAtDrive, lookAtPlace, lookAtWays } from './look-at.ts';
import { PlaceButtons } from './place-buttons.ts';
import { dragLine } from './places/drag-line.ts';
import type { AskTile } from './tile-queue.ts';
import { toLatLng } from './unit-square.ts';
import { mapWays } from './ways/shown-ways.ts';
import { zoomByWheel } from './wheel-zoom.ts';

interface MapEvents {
  readonly ask: AskTile;
  onCursor(m: number): void;
  onSelect(id: string): void;
  onHover(id: string | undefined): void;
  onRaiseWay(index: number): void;
  onMovePlace(key: number, to: Place): void;
  /** a place was put: at the end of the plan, or between the places about a distance along the drive */
  onPutPlace(at: Place, betweenM?: number): void;
  onNote(id: string): void;
  /** where a new note belongs */
  onPutNote(at: Place): void;
}

/** The map as the rest of the window drives it. */
interface MountedMap {
  showMap(summary: MapSummary | undefined): void;
  /** @param stays what is looked at stays in view */
  showDrive(drive: FollowedDrive | undefined, stays: boolean): void;
  showFindings(findings: readonly Finding[], selected: Finding | undefined): void;
  showNear(id: string | undefined): void;
  showPlan(plan: { readonly places: readonly PlanPlace[]; readonly placing: boolean } | undefined): void;
  /** @param noting a click says where a new one belongs */
  showNotes(notes: readonly KeptNote[], noting: boolean): void;
  showStops(stops: readonly StopTimes[]): void;
  middle(): Place;
  /** how far along the drive its line is nearest to a place, metres. @param share about how far, of the whole */
  alongM(place: Place, share: number): number;
  showWays(ways: readonly WayRound[], raised: readonly number[]): void;
  showCursor(m: number, card: VehicleCard | undefined): void;
  showBackground(tiles: Settings['tiles']): void;
  showUnits(units: Units): void;
  dispose(): void;
}

/** What was chosen or moved on the map itself: it needs no moving of the map. */
interface Own {
  selectedId: string | undefined;
  cursorM: number;
}

export function mountMap(element: HTMLElement, events: MapEvents): MountedMap {
  const shown = nothingShown(element);
  const own: Own = { selectedId: undefined, cursorM: Number.NaN };
  const planning = { open: false, placing: false, noting: false };
  const layers = createLayers(element, shown, {
    ask: events.ask,
    hover: events.onHover,
    raiseWay: events.onRaiseWay,
    movePlace: events.onMovePlace,
    openNote: events.onNote,
    choose(id) {
      own.selectedId = id;
      events.onSelect(id);
    },
  });
  const ends = [
    followPointer(layers.map, (event, reachPx) => {
      if (planning.noting && event.type === 'click') {
        events.onPutNote(placeOf(event.latlng));
        return;
      }
      if (planning.placing && event.type === 'click') {
        events.onPutPlace(placeOf(event.latlng));
        return;
      }
      const m = nearestTo(event, reachPx, layers, shown);
      if (m === undefined) return;
      own.cursorM = m;
      events.onCursor(m);
    }),
    followPage(element, layers, shown),
    zoomByWheel(layers.map),
    dragLine(layers.map, {
      grab: (event) => (planning.open ? nearestTo(event, GRAB_PX, layers, shown) : undefined),
      drop: (atM, at) => events.onPutPlace(placeOf(at), atM),
    }),
  ];
  new PlaceButtons({
    wholeDrive: () => lookAtDrive(layers, shown),
    thisPlace: () => lookAtPlace(layers, shown),
  }).addTo(layers.map);
  let scale: Control.Scale | undefined;
  return {
    showMap: (summary) => showMap(summary, layers, shown),
    showDrive: (drive, stays) => showDrive(drive, { stays }, layers, shown),
    showFindings: (findings, selected) => showFindings({ findings, selected }, own, layers, shown),
    showNear: (id) => layers.marks.showNear(id),
    showPlan(plan) {
      planning.open = plan !== undefined;
      planning.placing = plan?.placing === true;
      element.classList.toggle('map-placing', planning.placing || planning.noting);
      if (!plan) element.classList.remove('map-grab');
      layers.places.show(plan?.places ?? []);
    },
    showStops: (stops) => layers.stops.show(stops),
    showNotes(notes, noting) {
      planning.noting = noting;
      element.classList.toggle('map-placing', planning.placing || noting);
      layers.notes.show(notes);
    },
    middle: () => placeOf(layers.map.getCenter()),
    alongM: (place, share) => alongM(place, share, shown),
    showWays: (ways, raised) => showWays({ ways, raised }, layers, shown),
    showCursor: (cursorM, card) => showCursor({ cursorM, card }, own, layers, shown),
    showBackground: (tiles) => showBackground(tiles, layers),
    showUnits(units) {
      scale?.remove();
      scale = scaleBar(units).addTo(layers.map);
      shown.units = units;
      showMarks(layers, shown);
    },
    dispose() {
      for (const end of ends) end();
      layers.close();
    },
  };
}

function showMap(summary: MapSummary | undefined, layers: Layers, shown: Shown): void {
  const { map, base, background } = layers;
  base.remove();
  shown.mapBounds = summary && boundsOf(summary);
  keepWithin(layers, shown);
  if (!summary) return;
  if (!background.isShown) base.addTo(map);
  const look = firstLook(summary);
  if (look && !shown.path) map.fitBounds(look, { animate: false });
}

function showDrive(
  drive: FollowedDrive | undefined,
  { stays }: { readonly stays: boolean },
  layers: Layers,
  shown: Shown,
): void {
  shown.drive = drive;
  shown.path = drive && drivePath(drive);
  keepWithin(layers, shown);
  if (!stays) lookAtDrive(layers, shown);
  layers.ends.show(shown.path);
  placeVehicle(layers, shown);
  placeTags(layers);
  drawSoon(layers);
}

/** Ways that are new are looked at whole, with what they leave out; which of them stands out moves nothing. */
function showWays(
  { ways, raised }: { readonly ways: readonly WayRound[]; readonly raised: readonly number[] },
  layers: Layers,
  shown: Shown,
): void {
  const isNew = ways.length > 0 && ways.some((way, i) => way !== shown.ways[i]?.way);
  shown.ways = mapWays(ways, raised);
  layers.wayTags.show(shown.ways);
  const findings = shown.ways.filter((each) => each.raised).flatMap(({ way }) => way.findings);
  layers.wayMarks.show({
    findings: findings.filter(({ folded }) => !folded),
    selectedId: undefined,
    units: shown.units,
  });
  placeTags(layers);
  drawSoon(layers);
  if (isNew) lookAtWays(layers, shown);
}

function showFindings(
  next: Pick<Shown, 'findings' | 'selected'>,
  own: Own,
  layers: Layers,
  shown: Shown,
): void {
  const { selected } = next;
  const changed = selected?.id !== shown.selected?.id;
  Object.assign(shown, next);
  showMarks(layers, shown);
  drawSoon(layers);
  if (!changed || !selected) return;
  if (selected.id !== own.selectedId) lookAt(selected, layers, shown);
  own.selectedId = undefined;
}

function showMarks(layers: Layers, { findings, selected, units }: Shown): void {
  layers.marks.show({ findings, selectedId: selected?.id, units });
  placeTags(layers);
}

function showCursor(next: Pick<Shown, 'cursorM' | 'card'>, own: Own, layers: Layers, shown: Shown): void {
  Object.assign(shown, next);
  placeVehicle(layers, shown);
  const place = shown.path && placeOnPath(shown.path, next.cursorM);
  if (place && next.cursorM !== own.cursorM)
    layers.map.panInside(toLatLng(place.x, place.y), { padding: [60, 60], animate: false });
}

function showBackground(tiles: Settings['tiles'], { map, base, background, texts }: Layers): void {
  background.show(tiles);
  if (tiles) base.remove();
  else if (!map.hasLayer(base)) base.addTo(map);
  texts.drawSoon();
}

/** The line is taken hold of within so many pixels. */
const GRAB_PX = 9;

function placeOf(at: LatLng): Place {
  const { lat, lng } = at.wrap();
  return { lat, lon: lng };
}

function alongM({ lat, lon }: Place, share: number, { path }: Shown): number {
  if (!path) return 0;
  const at = { x: mercatorX(lon), y: mercatorY(lat) };
  return nearestM(path, at, { aboutM: share * path.lengthM, reach: 1, same: SAME_PLACE }) ?? 0;
}

/** Passes of the drive as near as this to a place are the same to it, unit square: about forty metres. */
const SAME_PLACE = 1e-6;

function scaleBar(units: Units): Control.Scale {
  return new Control.Scale({ metric: units !== 'imperial', imperial: units !== 'metric', maxWidth: 120 });
}

function drawSoon({ line, texts }: Layers): void {
  line.drawSoon();
  texts.drawSoon();
}

/** How far along the drive the pointer is; undefined where it is not near it. */
function nearestTo({ latlng }: LeafletMouseEvent, reachPx: number, { map }: Layers, shown: Shown) {
  const world = worldPx(map.getZoom());
  return (
    shown.path &&
    nearestM(
      shown.path,
      { x: mercatorX(latlng.lng), y: mercatorY(latlng.lat) },
      { aboutM: shown.cursorM, reach: reachPx / world, same: 2 / world },
    )
  );
}

/** The map's own zoom, the size it is given, the palette and the faces. @returns the way to end it */
function followPage(element: HTMLElement, layers: Layers, shown: Shown): () => void {
  // before the canvases hear of it: they draw lines to where the marks stand
  layers.map.on('zoomend', () => {
    layers.marks.arrange();
    layers.wayMarks.arrange();
    layers.ends.arrange();
    placeTags(layers);
    placeVehicle(layers, shown);
  });
  layers.map.on('movestart', () => {
    shown.whole = false;
  });
  const resized = new ResizeObserver(() => {
    const { whole } = shown;
    layers.map.invalidateSize({ pan: false });
    keepWithin(layers, shown);
    if (whole) lookAtDrive(layers, shown);
  });
  resized.observe(element);
  const endPalette = onPaletteChange(() => {
    shown.palette = readPalette(element);
    layers.base.repaint();
    drawSoon(layers);
  });
  const onFaces = () => {
    forgetWidths();
    layers.texts.drawSoon();
  };
  document.fonts.addEventListener('loadingdone', onFaces);
  return () => {
    endPalette();
    resized.disconnect();
    document.fonts.removeEventListener('loadingdone', onFaces);
  };
}
