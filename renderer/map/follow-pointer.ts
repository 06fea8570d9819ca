import type { Map as LeafletMap, LeafletMouseEvent } from 'leaflet';

/** The pointer takes hold of the drive within this many pixels. */
const HOVER_PX = 14;
const CLICK_PX = 24;

/** @returns the way to end it */
export function followPointer(
  map: LeafletMap,
  moved: (event: LeafletMouseEvent, reachPx: number) => void,
): () => void {
  let frame = 0;
  map.on('click', (event) => moved(event, CLICK_PX));
  map.on('mousemove', (event) => {
    // while dragging, the map moves and not the vehicle
    if (event.originalEvent.buttons !== 0) return;
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(() => moved(event, HOVER_PX));
  });
  map.on('mouseout', () => cancelAnimationFrame(frame));
  return () => cancelAnimationFrame(frame);
}
