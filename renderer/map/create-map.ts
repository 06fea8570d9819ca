import { Control, Map as LeafletMap } from 'leaflet';
import { ZOOM_MAX } from '../../geo/basemap/features.ts';

const CREDIT =
  '© <a href="https://www.openstreetmap.org/copyright" target="_blank" rel="noopener">OpenStreetMap</a> contributors';

/** The panes by name, each with its height above the others. */
const PANES = { background: 150, drive: 410, texts: 420, ends: 605, vehicle: 610, marks: 620 } as const;
/** The rows beside the map say what these show. */
const UNHEARD = ['ends', 'vehicle', 'marks'] as const;

/** As much of the world as is ever seen at once. */
export const LEAST_ZOOM = 3;

/** An empty map of the whole world, with its buttons, its credit and the panes that everything else is laid on. */
export function createMap(element: HTMLElement): { map: LeafletMap; credit: Control.Attribution } {
  const map = new LeafletMap(element, {
    zoomControl: false,
    attributionControl: false,
    zoomAnimation: false,
    fadeAnimation: false,
    markerZoomAnimation: false,
    inertia: !matchMedia('(prefers-reduced-motion: reduce)').matches,
    minZoom: LEAST_ZOOM,
    maxZoom: ZOOM_MAX + 1,
    center: [50, 0],
    zoom: 5,
    zoomSnap: 1,
    // one notch of the wheel is one level: wheel-zoom.ts
    scrollWheelZoom: false,
    maxBoundsViscosity: 1,
    boxZoom: false,
  });
  new Control.Zoom({ zoomInTitle: 'Zoom in', zoomOutTitle: 'Zoom out' }).addTo(map);
  const credit = new Control.Attribution({ prefix: false }).addTo(map).addAttribution(CREDIT);
  for (const [name, height] of Object.entries(PANES)) map.createPane(name).style.zIndex = String(height);
  for (const name of UNHEARD) map.getPane(name)?.setAttribute('aria-hidden', 'true');
  return { map, credit };
}
