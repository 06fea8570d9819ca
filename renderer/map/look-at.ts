import { type FitBoundsOptions, LatLngBounds } from 'leaflet';
import type { Finding } from '../../geo/report/report.ts';
import type { MapSummary } from '../../main/contract/map-summary.ts';
import { LEAST_ZOOM } from './create-map.ts';
import { linesBetween, type PathBox, pathBox, placeOnPath } from './drive/drive-path.ts';
import type { Layers, Shown } from './layers.ts';
import { toLatLng } from './unit-square.ts';

export function boundsOf({ bounds }: Pick<MapSummary, 'bounds'>): LatLngBounds | undefined {
  return bounds ? new LatLngBounds([bounds.south, bounds.west], [bounds.north, bounds.east]) : undefined;
}

/** What is looked at of a map before there is a drive. */
export function firstLook({ bounds, shelf }: MapSummary): LatLngBounds | undefined {
  return boundsOf({ bounds: shelf?.lookAt ?? bounds });
}

/** About so much more than map and drive is seen of the world, as a share of them. */
const ROUND_ABOUT = 0.1;

/** The map is not zoomed or dragged out of what is known: the open map and the drive. */
export function keepWithin({ map }: Layers, { mapBounds, path }: Shown): void {
  const box = path && pathBox(path);
  const bounds = new LatLngBounds([]);
  if (mapBounds) bounds.extend(mapBounds);
  if (box) bounds.extend(boundsOfBox(box));
  // what held for the map before would hold for the zoom that is worked out now
  map.setMinZoom(LEAST_ZOOM);
  if (!bounds.isValid()) {
    map.setMaxBounds(undefined);
    return;
  }
  const room = bounds.pad(ROUND_ABOUT);
  map.setMinZoom(Math.max(LEAST_ZOOM, map.getBoundsZoom(room)));
  map.setMaxBounds(room);
}

function boundsOfBox({ west, south, east, north }: PathBox): LatLngBounds {
  return new LatLngBounds(toLatLng(west, south), toLatLng(east, north));
}

/** A place is looked at from so near; what is longer, whole. */
const LOOK_ZOOM = 17;
const MARGIN: FitBoundsOptions = { padding: [48, 48], maxZoom: LOOK_ZOOM, animate: false };

export function lookAtDrive({ map }: Layers, shown: Shown): void {
  const box = shown.path && pathBox(shown.path);
  if (box) map.fitBounds(boundsOfBox(box), MARGIN);
  shown.whole = box !== undefined;
}

/** What is opened, else where the vehicle is. */
export function lookAtPlace(layers: Layers, shown: Shown): void {
  const { selected, path, cursorM } = shown;
  if (selected) {
    lookAt(selected, layers, shown);
    return;
  }
  const place = path && placeOnPath(path, cursorM);
  if (place) layers.map.setView(toLatLng(place.x, place.y), LOOK_ZOOM, { animate: false });
}

/** Brings a finding into the middle, from its first metre to its last. */
export function lookAt({ at, fromM, toM }: Finding, { map }: Layers, { path }: Shown): void {
  const bounds = new LatLngBounds([[at.lat, at.lon]]);
  for (const line of path ? linesBetween(path, fromM, toM) : [])
    for (let i = 0; i < line.length; i += 2) bounds.extend(toLatLng(line[i]!, line[i + 1]!));
  map.fitBounds(bounds, MARGIN);
}

/** The ways round that are shown, whole, with the stretch of the drive that they leave out. */
export function lookAtWays({ map }: Layers, { ways, path }: Shown): void {
  const bounds = new LatLngBounds([]);
  for (const { way, line } of ways)
    for (const each of [line, ...(path ? linesBetween(path, way.fromM, way.toM) : [])])
      for (let i = 0; i < each.length; i += 2) bounds.extend(toLatLng(each[i]!, each[i + 1]!));
  if (bounds.isValid()) map.fitBounds(bounds, MARGIN);
}
