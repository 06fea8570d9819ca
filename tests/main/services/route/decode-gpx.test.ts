import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { decodeGpx } from '../../../../main/services/route/decode-gpx.ts';
import { readRouteBytes } from '../../../../main/services/route/read-route-file.ts';
import { gpx, TWO_POINTS, track } from '../../../geo/drive/gpx/gpx-text.ts';

const FILE = gpx(track(TWO_POINTS, 'Café €5'));
const utf16le = (text: string) => Buffer.from(text, 'utf16le');
const utf16be = (text: string) => utf16le(text).swap16();

/** The text with é and € in windows-1252. */
function cp1252(text: string): Buffer {
  return Buffer.from(text.replaceAll('€', '\x80'), 'latin1');
}

function nameIn(bytes: Uint8Array): string {
  const read = readRouteBytes(bytes, 'drive.gpx');
  if (!read.ok) throw new Error(read.error.message);
  return read.value.routes[0]?.name ?? '';
}

describe('a name with letters beyond ASCII', () => {
  const declared = (encoding: string) => FILE.replace('UTF-8', encoding);
  it.each([
    ['UTF-8', Buffer.from(FILE)],
    ['UTF-8 with a mark', Buffer.from(`\uFEFF${FILE}`)],
    ['UTF-8 after blank lines', Buffer.from(`\n ${FILE}`)],
    ['UTF-8 that says UTF-16', Buffer.from(declared('UTF-16'))],
    ['UTF-16 little-endian with a mark', utf16le(`\uFEFF${declared('UTF-16')}`)],
    ['UTF-16 big-endian with a mark', utf16be(`\uFEFF${declared('UTF-16')}`)],
    ['UTF-16 little-endian without a mark', utf16le(FILE)],
    ['UTF-16 big-endian without a mark', utf16be(FILE)],
    ['windows-1252', cp1252(declared('windows-1252'))],
    ['Latin-1, read as its superset', cp1252(declared('ISO-8859-1'))],
    ['Latin-1 in single quotes', cp1252(declared('ISO-8859-1').replace('"ISO-8859-1"', "'iso-8859-1'"))],
  ])('is read from %s', (_, bytes) => {
    expect(nameIn(bytes)).toBe('Café €5');
  });

  it('is read from another declared encoding', () => {
    const bytes = Buffer.from(gpx(track(TWO_POINTS, '\xc1')).replace('UTF-8', 'windows-1251'), 'latin1');
    expect(nameIn(bytes)).toBe('Б');
  });

  it('is read as windows-1252, with a note, when the file is not the UTF-8 it says', () => {
    const read = readRouteBytes(cp1252(FILE), 'drive.gpx');
    expect(read.ok && read.value.routes[0]?.name).toBe('Café €5');
    expect(read.ok && read.value.notes).toEqual([
      'The file is not UTF-8; names were read as windows-1252 and may show wrong letters.',
    ]);
  });

  it('maps every byte of windows-1252 as the encoding standard has it', () => {
    const bytes = Uint8Array.from({ length: 128 }, (_, i) => 128 + i);
    const decoded = decodeGpx(Buffer.concat([Buffer.from('<?xml version="1.0" encoding="cp1252"?>'), bytes]));
    // WHATWG Encoding Standard, index windows-1252, from memory
    const text = decoded.ok ? decoded.value.text.slice(39) : '';
    expect(text.slice(0, 32)).toBe('€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ');
    expect(text.slice(32)).toBe(String.fromCharCode(...Array.from({ length: 96 }, (_, i) => 160 + i)));
  });
});

describe('bytes that are refused by name', () => {
  const message = (bytes: Uint8Array) => {
    const read = readRouteBytes(bytes, 'drive.gpx');
    return read.ok ? 'was read' : read.error.message;
  };
  it.each([
    ['nothing', Buffer.alloc(0), 'drive.gpx: The file is empty'],
    ['NULs', Buffer.alloc(64), 'The file is empty'],
    ['gzip', gzipSync(FILE), 'This is a gzip file; unpack it first.'],
    ['zip', Buffer.from('PK\x03\x04rest'), 'This is a zip (or KMZ) file'],
    [
      'a FIT recording',
      Buffer.from([14, 16, 0, 0, 0, 0, 0, 0, 0x2e, 0x46, 0x49, 0x54, 0, 0]),
      'is a FIT recording',
    ],
    ['UTF-32', Buffer.from([0xff, 0xfe, 0, 0, 0x3c, 0, 0, 0]), 'UTF-32'],
    ['half a UTF-16 letter', Buffer.concat([utf16le(`\uFEFF${FILE}`), Buffer.from([0x3c])]), 'damaged'],
    [
      'an unknown encoding',
      Buffer.from(FILE.replace('UTF-8', 'klingon')),
      'encoded as "klingon", which is not known',
    ],
    ['JSON', Buffer.from('{"type":"LineString"}'), 'This is JSON'],
    ['KML', Buffer.from('<kml/>'), 'this is a KML file'],
    ['TCX', Buffer.from('<TrainingCenterDatabase/>'), 'this is a TCX file'],
    ['more than the limit', Buffer.alloc(64 * 1024 * 1024 + 1, 32), '65 MiB is more than the 64 MiB read'],
  ])('%s', (_, bytes, reason) => {
    expect(message(bytes)).toContain(reason);
  });
});
