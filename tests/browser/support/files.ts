import { readFileSync } from 'node:fs';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/** Tests and scripts, built or not, run from the root. */
const SAMPLES = resolve('sample-routes');

export function sampleDrive(id: string): string {
  return join(SAMPLES, 'drives', `${id}.gpx`);
}

export interface NamedBytes {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A drive under a name that tries to be more than text. */
export const HOSTILE_NAME = `<img src=x onerror=alert(1)>\u202Eevil\u202C ${'long '.repeat(2000)}`;

/** The sample drive with another name inside. */
export function renamedDrive(id: string, file: string, name: string): NamedBytes {
  const escaped = name.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  const text = readFileSync(sampleDrive(id), 'utf8').replace(
    /<name>[^<]*<\/name>/g,
    `<name>${escaped}</name>`,
  );
  return gpx(file, text);
}

export function gpx(name: string, text: string): NamedBytes {
  return { name, mimeType: 'application/gpx+xml', buffer: Buffer.from(text) };
}

/** A load list as a file. */
export function loadList(name: string, items: readonly object[]): NamedBytes {
  const list = { format: 'lanegauge.load', version: 1, items };
  return { name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(list)) };
}

/** A short drive far from the sample district. */
export const ELSEWHERE = gpx(
  'elsewhere.gpx',
  `<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Elsewhere</name><trkseg>${[0, 1, 2, 3].map((i) => `<trkpt lat="${51 + i * 0.001}" lon="7"/>`).join('')}</trkseg></trk></gpx>`,
);

/** A road under a 2 m bar, and a drive along it: a map and a drive that belong together. */
export const LOW_ROAD: readonly NamedBytes[] = [
  {
    name: 'low.osm',
    mimeType: 'application/xml',
    buffer: Buffer.from(
      `<osm version="0.6">${[0, 1, 2, 3, 4].map((i) => `<node id="${i + 1}" lat="${51 + i * 0.002}" lon="7"/>`).join('')}<way id="77"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="4"/><nd ref="5"/><tag k="highway" v="residential"/><tag k="name" v="Low Road"/><tag k="maxheight" v="2"/></way></osm>`,
    ),
  },
  gpx(
    'low.gpx',
    `<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Under the bar</name><trkseg>${Array.from({ length: 60 }, (_, i) => `<trkpt lat="${(51.0005 + i * 0.0001).toFixed(4)}" lon="7"/>`).join('')}</trkseg></trk></gpx>`,
  ),
];

/**
 * Writes a map file whose reading takes long enough to be stopped.
 * @param megabytes about its size
 * @returns its path
 */
export async function longMap(megabytes: number): Promise<string> {
  const path = join(await mkdtemp(join(tmpdir(), 'lanegauge-long-')), 'long.osm');
  const parts = ['<?xml version="1.0"?><osm version="0.6">'];
  let size = 0;
  for (let id = 1; size < megabytes * 1e6; id++) {
    const lat = (48 + (id % 9973) * 1e-5).toFixed(5);
    const part = `<node id="${id}" lat="${lat}" lon="11.${id % 7919}"/>\n`;
    parts.push(part);
    size += part.length;
  }
  parts.push('<way id="1"><nd ref="1"/><nd ref="2"/><tag k="highway" v="residential"/></way></osm>');
  await writeFile(path, parts.join(''));
  return path;
}
