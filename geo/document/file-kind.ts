import { clip } from '../units/text.ts';

/** What a file is, told by its first bytes; `other` where they tell nothing. */
export type FileKind = 'drive' | 'map' | 'card' | 'load' | Foreign | 'other';

type Foreign =
  | 'empty'
  | 'report'
  | 'pdf'
  | 'zip'
  | 'picture'
  | 'web page'
  | 'kml'
  | 'tcx'
  | 'fit'
  | 'geojson';

/** As many first bytes as are looked at. */
export const HEAD_BYTES = 4096;

/** Beginnings of common formats, at their offset, as latin-1 text (the formats' own specifications, from memory). */
const SIGNATURES: readonly (readonly [Foreign, number, readonly string[]])[] = [
  ['pdf', 0, ['%PDF-']],
  ['zip', 0, ['PK\x03\x04', 'PK\x05\x06', '7z\xbc\xaf', 'Rar!']],
  ['picture', 0, ['\x89PNG', '\xff\xd8\xff', 'GIF8', 'II*\0', 'MM\0*']],
  ['picture', 4, ['ftyphei', 'ftypmif1', 'ftypavif']],
  ['picture', 8, ['WEBP']],
  ['fit', 8, ['.FIT']],
];

/** In the order they are looked for: a page that quotes a drive is a page. */
const TEXTS: readonly (readonly [FileKind, RegExp])[] = [
  ['card', /^\s*\{[\s\S]*"format"\s*:\s*"lanegauge\.vehicle"/],
  ['load', /^\s*\{[\s\S]*"format"\s*:\s*"lanegauge\.load"/],
  ['report', /^\s*\{[\s\S]*"format"\s*:\s*"lanegauge\.report"/],
  ['geojson', /^\s*\{[\s\S]*"type"\s*:\s*"(?:FeatureCollection|Feature)"/],
  ['web page', /^\s*(?:<!doctype html|<html[\s>])/i],
  ['drive', /<(?:\w+:)?gpx[\s>]/],
  ['map', /<osm[\s>]|OSMHeader/],
  ['kml', /<(?:\w+:)?kml[\s>]/],
  ['tcx', /<TrainingCenterDatabase[\s>]/],
];

/** Tells a file by its first bytes, whatever its name. @param head at least `HEAD_BYTES` of them, or all */
export function fileKind(head: Uint8Array): FileKind {
  if (head.length === 0) return 'empty';
  const text = asText(head);
  const signed = SIGNATURES.find(([, at, marks]) => marks.some((mark) => text.startsWith(mark, at)));
  if (signed) return signed[0];
  return TEXTS.find(([, mark]) => mark.test(text))?.[0] ?? 'other';
}

function asText(head: Uint8Array): string {
  const wide = head[0] === 0xff && head[1] === 0xfe;
  const marked = head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf;
  let text = '';
  for (let i = wide ? 2 : marked ? 3 : 0; i < Math.min(head.length, HEAD_BYTES); i += wide ? 2 : 1)
    text += String.fromCharCode(head[i]!);
  return text;
}

const WHAT: Readonly<Partial<Record<FileKind, string>>> = {
  empty: 'is empty. Save it or copy it once more, and open that.',
  report: 'is a report of Lanegauge, what a check came to. Open the drive itself, the GPX file.',
  pdf: 'is a PDF. Save the drive as a GPX file where it was planned, and open that.',
  zip: 'is packed. Unpack it, and open the GPX or the map file inside.',
  picture: 'is a picture. Save the drive as a GPX file where it was planned, and open that.',
  'web page': 'is a web page, not the file it offers. Download the file itself, and open that.',
  kml: 'is a KML file. Save the drive as a GPX file where it was planned, and open that.',
  tcx: 'is a TCX recording. Save it as a GPX file in the program it comes from, and open that.',
  fit: 'is a FIT recording. Save it as a GPX file in the program it comes from, and open that.',
  geojson:
    'is GeoJSON, which does not say enough about roads. Open the drive as GPX, a map as .osm or .osm.pbf.',
};

/** What a file is that cannot be opened, and what to do; undefined for those that can, or may. */
export function sayForeign(kind: FileKind, name: string): string | undefined {
  const what = WHAT[kind];
  return what === undefined ? undefined : `${clip(name, 80)} ${what}`;
}

const IS: Readonly<Partial<Record<FileKind, string>>> = {
  drive: 'a drive (GPX)',
  map: 'map data',
  pdf: 'a PDF',
  zip: 'a packed file',
  picture: 'a picture',
  'web page': 'a web page',
  kml: 'a KML file',
  tcx: 'a TCX recording',
  fit: 'a FIT recording',
  geojson: 'GeoJSON',
};

/**
 * That a file named as one of ours is another kind of file; undefined where its reader can tell more.
 * @param what it was named as: `vehicle card`
 */
export function sayNoDocument(kind: FileKind, file: string, what: string): string | undefined {
  if (kind === 'empty') return `${file} is empty, and no ${what}. Name the file of the ${what}.`;
  const is = IS[kind];
  return is && `${file} is ${is}, not a ${what}. Name the file of the ${what}, which is text (.json).`;
}

/** A folder is no file; what lies in it may be. */
export function sayFolder(name: string): string {
  return `${clip(name, 80)} is a folder. Open it, and drop the files inside.`;
}
