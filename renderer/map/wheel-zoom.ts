import type { Map as LeafletMap } from 'leaflet';

/** A step of the wheel says at least so much at once; a finger's sliding says less, often. Pixels of scrolling. */
const NOTCH_PX = 40;
/** A finger slides so far for one level. */
const SLIDE_PX = 80;
/** A wheel that counts in lines or pages, as pixels. */
const UNIT_PX: readonly number[] = [1, 40, 800];

/** Turns the wheel into levels of zoom: one notch is one level; what a finger slides adds up to one. */
export function wheelLevels(): (deltaY: number, deltaMode: number) => -1 | 0 | 1 {
  let slidPx = 0;
  return (deltaY, deltaMode) => {
    const px = deltaY * (UNIT_PX[deltaMode] ?? 1);
    if (Math.abs(px) >= NOTCH_PX) {
      slidPx = 0;
      return px < 0 ? 1 : -1;
    }
    slidPx = Math.sign(px) === -Math.sign(slidPx) ? px : slidPx + px;
    if (Math.abs(slidPx) < SLIDE_PX) return 0;
    const level = slidPx < 0 ? 1 : -1;
    slidPx = 0;
    return level;
  };
}

/** Zooms by the wheel about the pointer. @returns the way to end it */
export function zoomByWheel(map: LeafletMap): () => void {
  const element = map.getContainer();
  const levels = wheelLevels();
  const onWheel = (event: WheelEvent) => {
    event.preventDefault();
    const level = levels(event.deltaY, event.deltaMode);
    if (level !== 0)
      map.setZoomAround(map.mouseEventToContainerPoint(event), map.getZoom() + level, { animate: false });
  };
  element.addEventListener('wheel', onWheel, { passive: false });
  return () => element.removeEventListener('wheel', onWheel);
}
