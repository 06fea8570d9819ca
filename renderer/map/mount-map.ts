import { Control, LatLngBounds, Map as LeafletMap, type LeafletMouseEvent, TileLayer } from 'leaflet';
import { ZOOM_MAX } from '../../geo/basemap/features.ts';
import { mercatorX, mercatorY } from '../../geo/earth/mercator.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../main/contract/map-summary.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { BaseLayer } from './base-layer.ts';
import { coveredByDrive, drawDrive } from './drive/draw-drive.ts';
import { type DrivePath, drivePath, nearestM, pathBox, placeOnPath } from './drive/drive-path.ts';
import { drawLabels, forgetWidths } from './labels/draw-labels.ts';
import { MARK_PX } from './marks/mark-element.ts';
import { MarkLayer } from './marks/mark-layer.ts';
import { onPaletteChange, readPalette } from './palette.ts';
import { type Sheet, SheetLayer } from './sheet-layer.ts';
import type { AskTile } from './tile-queue.ts';
import { toLatLng } from './unit-square.ts';
import { VehicleMarker } from './vehicle-marker.ts';

export interface MapEvents {
  readonly ask: AskTile;
  onCursor(m: number): void;
  onSelect(id: string): void;
}

/** The map as the rest of the window drives it. */
export interface MountedMap {
  showMap(summary: MapSummary | undefined): void;
  showDrive(followed: FollowedDrive | undefined): void;
  showFindings(findings: readonly Finding[], selected: Finding | undefined): void;
  showCursor(m: number, card: VehicleCard | undefined): void;
  showBackground(tiles: Settings['tiles']): void;
  showUnits(units: Settings['units']): void;
  dispose(): void;
}

const HOVER_PX = 14;
const CLICK_PX = 24;
const TEXTS_EVERY_MS = 150;
/** A finding is looked at from no farther than this. */
const LOOK_ZOOM = 15;
const CREDIT =
  '© <a href="https://www.openstreetmap.org/copyright" target="_blank" rel="noopener">OpenStreetMap</a> contributors';

export function mountMap(element: HTMLElement, events: MapEvents): MountedMap {
  const map = new LeafletMap(element, {
    zoomControl: false,
    attributionControl: false,
    zoomAnimation: false,
    fadeAnimation: false,
    markerZoomAnimation: false,
    inertia: !matchMedia('(prefers-reduced-motion: reduce)').matches,
    minZoom: 3,
    maxZoom: ZOOM_MAX + 1,
    center: [50, 0],
    zoom: 5,
    zoomSnap: 1,
    boxZoom: false,
  });
  new Control.Zoom({ zoomInTitle: 'Zoom in', zoomOutTitle: 'Zoom out' }).addTo(map);
  const credit = new Control.Attribution({ prefix: false }).addTo(map).addAttribution(CREDIT);
  addPane(map, 'background', 150);
  addPane(map, 'texts', 420);
  addPane(map, 'drive', 410);
  addPane(map, 'marks', 620).setAttribute('aria-hidden', 'true');
  addPane(map, 'vehicle', 610).setAttribute('aria-hidden', 'true');

  let palette = readPalette(element);
  let path: DrivePath | undefined;
  let followed: FollowedDrive | undefined;
  let findings: readonly Finding[] = [];
  let selected: Finding | undefined;
  let cursor = 0;
  let card: VehicleCard | undefined;
  /** what was chosen or moved on the map itself needs no moving of the map */
  let ownSelect: string | undefined;
  let ownCursor = Number.NaN;
  let background: TileLayer | undefined;
  let backgroundCredit: string | undefined;
  let scale: Control.Scale | undefined;

  const marks = new MarkLayer(map, 'marks', (id) => {
    ownSelect = id;
    events.onSelect(id);
  });
  const texts = new SheetLayer('texts', (sheet) => {
    const taken = [
      ...marks.boxes.map(({ x, y }) => ({
        x: x + sheet.offsetX,
        y: y + sheet.offsetY,
        halfWidth: MARK_PX / 2,
        halfHeight: MARK_PX / 2,
      })),
      ...(path ? coveredByDrive(sheet, path) : []),
    ];
    if (!background) drawLabels(sheet, base.featuresAt(sheet.zoom), palette, taken);
  });
  const line = new SheetLayer('drive', (sheet) => {
    if (!path || !followed) return;
    drawDrive(sheet, { followed, path, findings, selectedId: selected?.id }, palette);
    drawLeaders(sheet);
  });
  const vehicle = new VehicleMarker(map, 'vehicle');
  const base = new BaseLayer({ ask: events.ask, palette: () => palette, onLabels: textsLater });

  let textsDue: ReturnType<typeof setTimeout> | undefined;
  /** Tiles come in one by one: their texts are placed a few times on the way, not at each. */
  function textsLater(): void {
    textsDue ??= setTimeout(() => {
      textsDue = undefined;
      texts.drawNow();
    }, TEXTS_EVERY_MS);
  }

  function drawLeaders(sheet: Sheet): void {
    const { ctx } = sheet;
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = 1.2;
    ctx.beginPath();
    for (const { place, shown } of marks.leaders) {
      ctx.moveTo(
        mercatorX(place.lon) * sheet.world + sheet.offsetX,
        mercatorY(place.lat) * sheet.world + sheet.offsetY,
      );
      ctx.lineTo(
        mercatorX(shown.lng) * sheet.world + sheet.offsetX,
        mercatorY(shown.lat) * sheet.world + sheet.offsetY,
      );
    }
    ctx.stroke();
  }

  function placeVehicle(): void {
    vehicle.show(path && placeOnPath(path, cursor), card);
  }

  function nearestTo({ latlng }: LeafletMouseEvent, reachPx: number): number | undefined {
    const world = 256 * 2 ** map.getZoom();
    return (
      path && nearestM(path, mercatorX(latlng.lng), mercatorY(latlng.lat), cursor, reachPx / world, 2 / world)
    );
  }

  function follow(event: LeafletMouseEvent, reachPx: number): void {
    const m = nearestTo(event, reachPx);
    if (m === undefined) return;
    ownCursor = m;
    events.onCursor(m);
  }

  line.addTo(map);
  texts.addTo(map);
  // before the sheets hear of it: they draw lines to where the marks stand
  map.on('zoomend', () => {
    marks.arrange();
    placeVehicle();
  });
  map.on('click', (event) => follow(event, CLICK_PX));
  let hover = 0;
  map.on('mousemove', (event) => {
    // while dragging, the map moves and not the vehicle
    if (event.originalEvent.buttons !== 0) return;
    cancelAnimationFrame(hover);
    hover = requestAnimationFrame(() => follow(event, HOVER_PX));
  });
  map.on('mouseout', () => cancelAnimationFrame(hover));

  const resized = new ResizeObserver(() => map.invalidateSize({ pan: false }));
  resized.observe(element);
  const endPalette = onPaletteChange(() => {
    palette = readPalette(element);
    base.repaint();
    line.drawSoon();
    texts.drawSoon();
  });
  const onFaces = () => {
    forgetWidths();
    texts.drawSoon();
  };
  document.fonts.addEventListener('loadingdone', onFaces);

  return {
    showMap(summary) {
      base.remove();
      if (!summary) return;
      if (!background) base.addTo(map);
      if (summary.bounds && !path) {
        const { south, west, north, east } = summary.bounds;
        map.fitBounds(new LatLngBounds([south, west], [north, east]), { animate: false });
      }
    },
    showDrive(next) {
      followed = next;
      path = next && drivePath(next);
      const box = path && pathBox(path);
      if (box) {
        const bounds = new LatLngBounds(toLatLng(box.west, box.south), toLatLng(box.east, box.north));
        map.fitBounds(bounds, { padding: [40, 40], maxZoom: 17, animate: false });
      }
      placeVehicle();
      line.drawSoon();
      texts.drawSoon();
    },
    showFindings(next, chosen) {
      const changed = chosen?.id !== selected?.id;
      findings = next;
      selected = chosen;
      marks.show(next, chosen?.id);
      line.drawSoon();
      texts.drawSoon();
      if (!changed || !chosen) return;
      if (chosen.id !== ownSelect) lookAt(chosen);
      ownSelect = undefined;
    },
    showCursor(m, nextCard) {
      cursor = m;
      card = nextCard;
      placeVehicle();
      const place = path && placeOnPath(path, m);
      if (place && m !== ownCursor)
        map.panInside(toLatLng(place.x, place.y), { padding: [60, 60], animate: false });
    },
    showBackground(tiles) {
      background?.remove();
      if (backgroundCredit !== undefined) credit.removeAttribution(backgroundCredit);
      background = undefined;
      backgroundCredit = undefined;
      if (tiles) {
        base.remove();
        background = new TileLayer(tiles.address, {
          pane: 'background',
          maxZoom: ZOOM_MAX + 1,
          maxNativeZoom: 19,
        });
        background.addTo(map);
        if (tiles.attribution !== '') {
          backgroundCredit = escaped(tiles.attribution);
          credit.addAttribution(backgroundCredit);
        }
      } else if (!map.hasLayer(base)) base.addTo(map);
      texts.drawSoon();
    },
    showUnits(units) {
      scale?.remove();
      scale = new Control.Scale({
        metric: units !== 'imperial',
        imperial: units !== 'metric',
        maxWidth: 120,
      });
      scale.addTo(map);
    },
    dispose() {
      cancelAnimationFrame(hover);
      clearTimeout(textsDue);
      endPalette();
      resized.disconnect();
      document.fonts.removeEventListener('loadingdone', onFaces);
      base.close();
      vehicle.close();
      map.remove();
    },
  };

  /** Brings a finding into view, near enough to be understood, moving no more than that takes. */
  function lookAt({ at }: Finding): void {
    const place = { lat: at.lat, lng: at.lon };
    if (map.getZoom() < LOOK_ZOOM) map.setView(place, LOOK_ZOOM, { animate: false });
    else map.panInside(place, { padding: [120, 120], animate: false });
  }
}

function addPane(map: LeafletMap, name: string, zIndex: number): HTMLElement {
  const pane = map.createPane(name);
  pane.style.zIndex = String(zIndex);
  return pane;
}

/** The attribution is the user's own text, and Leaflet takes markup. */
function escaped(text: string): string {
  const element = document.createElement('span');
  element.textContent = text;
  return element.innerHTML;
}
