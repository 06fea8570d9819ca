import { SaxesParser } from 'saxes';

/** What a drive with waypoints is made of (GPX 1.1), each with the attributes it has. */
const ELEMENTS: Readonly<Record<string, readonly string[]>> = {
  gpx: ['version', 'creator', 'xmlns', 'xmlns:xsi', 'xsi:schemaLocation'],
  metadata: [],
  trk: [],
  trkseg: [],
  trkpt: ['lat', 'lon'],
  wpt: ['lat', 'lon'],
  name: [],
  desc: [],
  cmt: [],
  sym: [],
  type: [],
  time: [],
  ele: [],
  extensions: [],
  'lanegauge:stop': ['xmlns:lanegauge', 'along'],
};
const STEERS = /[\p{Cf}\p{Cs}\p{Zl}\p{Zp}]|(?!\n)\p{Cc}/u;

/** Reads a drive as an XML parser that forgives nothing does. @returns what is wrong; undefined for nothing */
export function gpxFault(gpx: string, waypoints?: number): string | undefined {
  const counts = { wpt: 0, trkpt: 0 };
  const parser = new SaxesParser({ xmlns: false });
  let fault: string | undefined;
  const wrong = (what: string) => {
    fault ??= what;
  };
  parser.on('error', ({ message }) => wrong(message));
  parser.on('doctype', () => wrong('a document type'));
  parser.on('comment', () => wrong('a comment'));
  parser.on('cdata', () => wrong('a CDATA section'));
  parser.on('opentag', ({ name, attributes }) => {
    const known = Object.hasOwn(ELEMENTS, name) ? ELEMENTS[name] : undefined;
    if (!known) return wrong(`an element <${name}>`);
    const odd = Object.keys(attributes).find((attribute) => !known.includes(attribute));
    if (odd !== undefined) wrong(`an attribute ${odd} of <${name}>`);
    if (name === 'wpt' || name === 'trkpt') counts[name]++;
  });
  parser.on('text', (text) => {
    if (STEERS.test(text)) wrong(`a text that steers: ${JSON.stringify(text.slice(0, 80))}`);
  });
  parser.write(gpx).close();
  if (fault !== undefined) return fault;
  if (counts.trkpt < 2) return `${counts.trkpt} positions`;
  return waypoints === undefined || counts.wpt === waypoints
    ? undefined
    : `${counts.wpt} waypoints for ${waypoints}`;
}
