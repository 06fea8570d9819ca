/** Elements of GPX that carry positions or hold such elements. */
export type GpxRole = 'gpx' | 'trk' | 'trkseg' | 'trkpt' | 'rte' | 'rtept' | 'wpt';

/** Where GPX 1.0 and 1.1 let each of them stand. */
const HOME: Readonly<Record<string, GpxRole>> = {
  trk: 'gpx',
  trkseg: 'trk',
  trkpt: 'trkseg',
  rte: 'gpx',
  rtept: 'rte',
  wpt: 'gpx',
};

/** The element is one of those that carry positions, wherever it stands. */
export function carriesPositions(local: string): boolean {
  return Object.hasOwn(HOME, local);
}

/** The element has a latitude or longitude of its own, in any letter case: a misspelt point must not vanish. */
export function hasPosition(attributes: Readonly<Record<string, string>>): boolean {
  for (const key in attributes) if (/^(?:lat|lon)$/iu.test(key)) return true;
  return false;
}

/** GPX allows no text directly inside these, where the elements with positions stand. */
export function holdsElementsOnly(part: string | undefined): boolean {
  return part === 'gpx' || part === 'trk' || part === 'trkseg' || part === 'rte';
}

/** The element's part inside `parent`, undefined when it has none there. */
export function roleInside(parent: string | undefined, local: string): GpxRole | undefined {
  return Object.hasOwn(HOME, local) && HOME[local] === parent ? (local as GpxRole) : undefined;
}

const GPX_URI = /^https?:\/\/www\.topografix\.com\/GPX\/1\/[01]\/?$/iu;

/**
 * The element belongs to GPX: it shares the root's namespace, whatever that is (some writers have their own or none),
 * or has a published one.
 */
export function isGpxElement(rootUri: string, uri: string): boolean {
  return uri === rootUri || GPX_URI.test(uri);
}
