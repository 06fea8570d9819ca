import { hostileText, numberText } from './hostile.ts';
import type { Random } from './random.ts';

const ELEMENTS = ['ele', 'time', 'name', 'desc', 'cmt', 'sym', 'type', 'extensions', 'link', 'fix'];

/** GPX of sound build, its contents anything. */
export function gpxText(random: Random): string {
  const version = random.pick(['1.1', '1.1', '1.0', '2.0', hostileText(random)]);
  const parts = many(random, 4, () =>
    random.pick([
      () =>
        `<trk>${named(random)}${many(random, 4, () => `<trkseg>${points(random, 'trkpt')}</trkseg>`)}</trk>`,
      () => `<rte>${named(random)}${points(random, 'rtept')}</rte>`,
      () => points(random, 'wpt'),
      () => `<metadata>${named(random)}</metadata>`,
      () => `<!--${escaped(hostileText(random)).replaceAll('--', '')}-->`,
    ])(),
  );
  return `<?xml version="1.0" encoding="UTF-8"?><gpx version="${escaped(version)}" creator="t" xmlns="http://www.topografix.com/GPX/1/1">${parts}</gpx>`;
}

function points(random: Random, element: string): string {
  let [lat, lon] = [50, 7];
  return many(random, 12, () => {
    lat += (random.below(200) - 100) / 1e5;
    lon += (random.below(200) - 100) / 1e5;
    const [a, b] = random.chance(0.1)
      ? [numberText(random), numberText(random)]
      : [lat.toFixed(6), lon.toFixed(6)];
    return `<${element} lat="${escaped(a)}" lon="${escaped(b)}">${random.chance(0.3) ? child(random) : ''}</${element}>`;
  });
}

function child(random: Random): string {
  const name = random.pick(ELEMENTS);
  const inside = random.pick([
    () => escaped(hostileText(random)),
    () => numberText(random),
    () => '2027-06-12T09:30:00Z',
    () => `<x xmlns="urn:x">${escaped(hostileText(random))}</x>`,
    () => `<![CDATA[${hostileText(random).replaceAll(']]>', '')}]]>`,
  ])();
  return `<${name}>${inside}</${name}>`;
}

const named = (random: Random): string => `<name>${escaped(hostileText(random))}</name>`;

function many(random: Random, most: number, make: () => string): string {
  return Array.from({ length: random.below(most + 1) }, make).join('');
}

/** Markup escaped, the rest as it is: what XML forbids is the reader's business. */
export function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}
