import type { Route } from './route.ts';

/**
 * The same drive with latitude and longitude changed about, which some programs write the wrong way round; undefined
 * where that is no place on Earth.
 */
export function swapped(route: Route): Route | undefined {
  if (!route.segments.every(({ lon }) => lon.every((deg) => Math.abs(deg) <= 90))) return undefined;
  return { ...route, segments: route.segments.map((each) => ({ ...each, lat: each.lon, lon: each.lat })) };
}
