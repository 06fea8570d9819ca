import { DivIcon, type LatLng, type Map as LeafletMap, type LeafletMouseEvent, Marker } from 'leaflet';

interface LineEvents {
  /** how far along the drive a point of the map is, metres; undefined where it is not on the line, or nothing may be dragged */
  grab(event: LeafletMouseEvent): number | undefined;
  drop(atM: number, at: LatLng): void;
}

/** Less than this is a click. */
const DRAG_LEAST_PX = 5;

/** Dragging the drive's line pulls a place out of it, through which the way is to lead. Escape lets it go. @returns the way to end it */
export function dragLine(map: LeafletMap, { grab, drop }: LineEvents): () => void {
  const box = map.getContainer();
  let held: { readonly atM: number; readonly x: number; readonly y: number } | undefined;
  let ghost: Marker | undefined;
  const letGo = () => {
    held = undefined;
    ghost?.remove();
    ghost = undefined;
    box.classList.remove('map-dragging');
    map.dragging.enable();
  };
  const onDown = (event: LeafletMouseEvent) => {
    if (event.originalEvent.button !== 0) return;
    const atM = grab(event);
    if (atM === undefined) return;
    held = { atM, x: event.containerPoint.x, y: event.containerPoint.y };
    map.dragging.disable();
  };
  const onMove = (event: LeafletMouseEvent) => {
    if (!held) {
      if (event.originalEvent.buttons === 0) box.classList.toggle('map-grab', grab(event) !== undefined);
      return;
    }
    const { x, y } = event.containerPoint;
    if (!ghost && Math.hypot(x - held.x, y - held.y) < DRAG_LEAST_PX) return;
    box.classList.add('map-dragging');
    ghost ??= ghostAt(event.latlng).addTo(map);
    ghost.setLatLng(event.latlng);
  };
  const onUp = (event: LeafletMouseEvent) => {
    const { atM } = held ?? {};
    const pulled = ghost !== undefined;
    if (held) letGo();
    if (pulled && atM !== undefined) drop(atM, event.latlng.wrap());
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !held) return;
    event.preventDefault();
    letGo();
  };
  map.on('mousedown', onDown).on('mousemove', onMove).on('mouseup', onUp).on('mouseout', letGoOutside);
  window.addEventListener('keydown', onKey, true);
  function letGoOutside() {
    if (held) letGo();
  }
  return () => {
    map.off('mousedown', onDown).off('mousemove', onMove).off('mouseup', onUp).off('mouseout', letGoOutside);
    window.removeEventListener('keydown', onKey, true);
  };
}

function ghostAt(at: LatLng): Marker {
  const dot = document.createElement('span');
  dot.className = 'plan-number plan-through';
  const icon = new DivIcon({ html: dot, className: 'map-place', iconSize: [0, 0] });
  return new Marker(at, { icon, interactive: false, keyboard: false, pane: 'marks' });
}
