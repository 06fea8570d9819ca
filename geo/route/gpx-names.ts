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
