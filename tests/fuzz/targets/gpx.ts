import type { RouteFile } from '../../../geo/drive/gpx/route.ts';
import { readRouteBytes } from '../../../main/services/route/read-route-file.ts';
import { gpxText } from '../make/gpx.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { sampleFiles } from '../make/samples.ts';
import { askedTwice, faultInSentences } from '../promises.ts';
import type { Target } from '../target.ts';

const SAMPLES = sampleFiles('drives').slice(0, 3);

export const gpx: Target = {
  name: 'GPX',
  weight: 8,
  make(random) {
    const made = random.chance(0.3) ? random.pick(SAMPLES) : new TextEncoder().encode(gpxText(random));
    return random.chance(0.8) ? mutateBytes(made, random) : made;
  },
  check: (input) => askedTwice(() => readRouteBytes(input, 'drive.gpx'), faultInRoutes),
};

/** Every position lies on Earth, and what was left out is told in sentences. */
function faultInRoutes({ routes, notes }: RouteFile): string | undefined {
  for (const { lat, lon } of routes.flatMap((route) => route.segments)) {
    if (lat.length !== lon.length) return 'latitudes and longitudes differ in number';
    if (!lat.every((each) => Math.abs(each) <= 90) || !lon.every((each) => Math.abs(each) <= 180))
      return 'a position that is not on Earth';
  }
  return faultInSentences(notes);
}
