import { describe, expect, it } from 'vitest';
import { fileKind, sayFolder, sayForeign } from '../../../geo/document/file-kind.ts';

const bytes = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('a file, told by its first bytes', () => {
  it.each([
    ['<?xml version="1.0"?><gpx version="1.1">', 'drive'],
    ['\xef\xbb\xbf<osm version="0.6">', 'map'],
    ['\0\0\0\r\n\tOSMHeader', 'map'],
    ['{ "format": "lanegauge.vehicle", "version": 1 }', 'card'],
    ['{"version":1,"format":"lanegauge.load"}', 'load'],
    ['{"format":"lanegauge.report"}', 'report'],
    ['', 'empty'],
    ['%PDF-1.7', 'pdf'],
    ['PK\x03\x04rest', 'zip'],
    ['\x89PNG\r\n', 'picture'],
    ['\0\0\0\x18ftypheic', 'picture'],
    ['<!DOCTYPE html><p>a <gpx > file</p>', 'web page'],
    ['<kml xmlns="x">', 'kml'],
    ['{"version":0.6,"elements":[]}', 'other'],
    ['anything else', 'other'],
  ])('%j is %s', (text, kind) => {
    expect(fileKind(bytes(text))).toBe(kind);
  });

  it('that cannot be opened is said with what to do; one that can, or may, is not', () => {
    expect(sayForeign('zip', 'tour.gpx')).toBe(
      'tour.gpx is packed. Unpack it, and open the GPX or the map file inside.',
    );
    expect(sayFolder('drives')).toContain('drives is a folder.');
    for (const kind of ['drive', 'map', 'card', 'load', 'other'] as const)
      expect(sayForeign(kind, 'a')).toBeUndefined();
  });
});

it('a file of two bytes a letter is told like any other, one letter cut in the middle left out', () => {
  const wide = (text: string) =>
    Uint8Array.from([0xff, 0xfe, ...[...text].flatMap((letter) => [letter.charCodeAt(0), 0])]);
  expect(fileKind(wide('<gpx version="1.1">'))).toBe('drive');
  expect(fileKind(Uint8Array.from([...wide('<kml xmlns="x">'), 0x3c]))).toBe('kml');
  expect(fileKind(Uint8Array.of(0xff, 0xd8, 0xff))).toBe('picture');
});
