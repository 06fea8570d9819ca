import { describe, expect, it } from 'vitest';
import { readGpx } from '../../../../geo/drive/gpx/read-gpx.ts';
import type { RouteFile } from '../../../../geo/drive/gpx/route.ts';
import type { Result } from '../../../../geo/result.ts';
import { gpx, TWO_POINTS, track } from './gpx-text.ts';

/** Per route: kind, number, name and the number of positions in each segment. */
function outline(text: string): string[] {
  const read = readGpx(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value.routes.map(
    ({ kind, number, name, segments }) =>
      `${kind} ${number} "${name}" ${segments.map(({ lat }) => lat.length).join('+')}`,
  );
}

function refused(read: Result<RouteFile>): string {
  if (read.ok) throw new Error('was read');
  return read.error.message;
}

function notes(text: string): readonly string[] {
  const read = readGpx(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value.notes;
}

function positions(text: string): number[][] {
  const read = readGpx(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value.routes[0]?.segments.map(({ lat, lon }) => [...lat, ...lon]) ?? [];
}

describe('a GPX file that is read', () => {
  it.each([
    ['a track', gpx(track()), ['track 1 "Lake" 2']],
    [
      'a route',
      gpx('<rte><name>R</name><rtept lat="1" lon="2"/><rtept lat="1" lon="3"/></rte>'),
      ['route 1 "R" 2'],
    ],
    ['GPX 1.0', gpx(track(), 'xmlns="http://www.topografix.com/GPX/1/0"'), ['track 1 "Lake" 2']],
    ['no namespace', gpx(track(), ''), ['track 1 "Lake" 2']],
    ['a namespace of its own', gpx(track(), 'xmlns="urn:example:gpx"'), ['track 1 "Lake" 2']],
    [
      'prefixes',
      '<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"><g:trk><g:name>P</g:name><g:trkseg><g:trkpt lat="1" lon="1"/><g:trkpt lat="1" lon="2"/></g:trkseg></g:trk></g:gpx>',
      ['track 1 "P" 2'],
    ],
    [
      'a published namespace below another root namespace',
      gpx(track(), 'xmlns="urn:x"').replace('<trk>', '<trk xmlns="http://www.topografix.com/GPX/1/1">'),
      ['track 1 "Lake" 2'],
    ],
    [
      'several segments',
      gpx(`<trk><trkseg>${TWO_POINTS}</trkseg><trkseg>${TWO_POINTS}<trkpt lat="3" lon="3"/></trkseg></trk>`),
      ['track 1 "" 2+3'],
    ],
    ['several tracks', gpx(track() + track(TWO_POINTS, 'Hill')), ['track 1 "Lake" 2', 'track 2 "Hill" 2']],
    [
      'a route before a track: tracks come first',
      gpx(`<rte><rtept lat="1" lon="2"/></rte>${track()}`),
      ['track 1 "Lake" 2', 'route 1 "" 1'],
    ],
    [
      'an empty track beside a good one, kept so that numbers hold',
      gpx(`<trk><name>none</name></trk>${track()}`),
      ['track 1 "none" ', 'track 2 "Lake" 2'],
    ],
    [
      'a track without a name whose points and extensions have one',
      gpx(
        '<trk><extensions><name>ext</name></extensions><trkseg><trkpt lat="1" lon="1"><name>pt</name></trkpt><trkpt lat="1" lon="2"/></trkseg></trk>',
      ),
      ['track 1 "" 2'],
    ],
    [
      'a name after the points',
      gpx(`<trk><trkseg>${TWO_POINTS}</trkseg><name>late</name></trk>`),
      ['track 1 "late" 2'],
    ],
    ['a name in CDATA', gpx(track(TWO_POINTS, '<![CDATA[A & <b>]]>')), ['track 1 "A & <b>" 2']],
    ['entities in a name', gpx(track(TWO_POINTS, 'A &amp; B &#233;&#x20AC;')), ['track 1 "A & B é€" 2']],
    [
      'markup in a name, as plain text',
      gpx(track(TWO_POINTS, '&lt;script&gt;x&lt;/script&gt;')),
      ['track 1 "<script>x</script>" 2'],
    ],
    ['an element in a name, by its text', gpx(track(TWO_POINTS, 'a<i>b</i>c')), ['track 1 "abc" 2']],
    ['a name over lines, in one', gpx(track(TWO_POINTS, ' a\n\tb ')), ['track 1 "a b" 2']],
    [
      'terminal controls in a name, blunted',
      gpx(track(TWO_POINTS, 'a&#27;[2Jb')).replace('version="1.0"', 'version="1.1"'),
      ['track 1 "a·[2Jb" 2'],
    ],
    [
      'comments and processing instructions',
      gpx(`<!-- <trkpt lat="9" lon="9"/> --><?x y?>${track()}`),
      ['track 1 "Lake" 2'],
    ],
    ['single quotes', gpx(track("<trkpt lat='1' lon='2'/><trkpt lat='1' lon='3'/>")), ['track 1 "Lake" 2']],
    ['leading white space and a byte order mark', `\uFEFF \r\n${gpx(track())}`, ['track 1 "Lake" 2']],
    ['NUL padding', `${gpx(track())}\0\0\0`, ['track 1 "Lake" 2']],
    ['NUL padding and a line end', `${gpx(track())}\0\0\r\n`, ['track 1 "Lake" 2']],
    ['a CR LF straight after a tag name', gpx(track()).replace('<gpx ', '<gpx\r\n'), ['track 1 "Lake" 2']],
    [
      'two types and two links',
      gpx(
        track().replace('<trkseg>', '<link href="a"/><link href="b"/><type>x</type><type>y</type><trkseg>'),
      ),
      ['track 1 "Lake" 2'],
    ],
  ])('%s', (_, text, expected) => {
    expect(outline(text)).toEqual(expected);
  });

  it('has numbers in decimal or exponent form with either sign', () => {
    const points = '<trkpt lat="+5.0e1" lon="-.5E+1"/><trkpt lat="50." lon=" 8 "/>';
    expect(positions(gpx(track(points)))).toEqual([[50, 50, -5, 8]]);
  });

  it('may reach the poles, cross the antimeridian and stand still', () => {
    const points = '<trkpt lat="90" lon="180"/><trkpt lat="-90" lon="-180"/><trkpt lat="-90" lon="-180"/>';
    expect(positions(gpx(track(points)))).toEqual([[90, -90, -90, 180, -180, -180]]);
  });

  it('keeps vendors’ shape points of a route in driving order', () => {
    const text = gpx(`<rte xmlns:v="urn:v">
      <rtept lat="1" lon="1"><extensions><v:ext><v:rpt lat="1.1" lon="1"/><v:rpt lat="1.2" lon="1"><v:s/></v:rpt></v:ext></extensions></rtept>
      <rtept lat="2" lon="1"><time>2026-05-01T10:00:00Z</time></rtept></rte>`);
    expect(positions(text)).toEqual([[1, 1.1, 1.2, 2, 1, 1, 1, 1]]);
    const read = readGpx(text);
    expect(read.ok && read.value.shapePoints).toBe(2);
    expect(read.ok && [...(read.value.routes[0]?.segments[0]?.timeMs ?? [])]).toEqual([
      Number.NaN,
      Number.NaN,
      Number.NaN,
      Date.UTC(2026, 4, 1, 10),
    ]);
  });

  it('leaves out foreign elements named as points, and says so', () => {
    const text = gpx(track(`${TWO_POINTS}<x:trkpt xmlns:x="urn:x" lat="60" lon="60"/>`));
    expect(outline(text)).toEqual(['track 1 "Lake" 2']);
    expect(notes(text)).toEqual([
      '1 element named as in GPX but of another namespace left out, first "trkpt" on line 3.',
    ]);
  });

  it('drops empty segments with a note', () => {
    const text = gpx(`<trk><trkseg/><trkseg>${TWO_POINTS}</trkseg><trkseg></trkseg></trk>`);
    expect(outline(text)).toEqual(['track 1 "" 2']);
    expect(notes(text)).toEqual(['Track 1: 2 segments without a position left out.']);
  });

  it('counts unreadable times as missing with a note, and empty ones without', () => {
    const text = gpx(
      track(
        '<trkpt lat="1" lon="1"><time>yesterday</time></trkpt><trkpt lat="1" lon="2"><time/></trkpt><trkpt lat="1" lon="3"><time>2026-02-29T00:00:00Z</time></trkpt>',
      ),
    );
    expect(notes(text)).toEqual([
      '2 times could not be read and counted as missing, first "yesterday" in track 1 "Lake", segment 1, position 1.',
    ]);
  });

  it('counts waypoints and notes those with a bad position', () => {
    const read = readGpx(gpx(`<wpt lat="1" lon="1"/><wpt lat="x" lon="1"/>${track()}`));
    expect(read.ok && read.value.waypoints).toBe(2);
    expect(read.ok && read.value.notes[0]).toContain('waypoint 2 on line 3');
  });

  it('notes a version other than 1.0 and 1.1', () => {
    expect(notes(gpx(track()).replace('version="1.1"', 'version="2"'))).toEqual([
      'The file says GPX version "2"; it was read as 1.1.',
    ]);
  });

  it('may nest 20,000 elements, with prefixes at every level', () => {
    const open = '<a><x:b>'.repeat(10_000);
    const close = '</x:b></a>'.repeat(10_000);
    const text = gpx(track() + open + close, 'xmlns="urn:g" xmlns:x="urn:x"');
    expect(outline(text)).toEqual(['track 1 "Lake" 2']);
  });

  it('may hold more than 120,000 points', () => {
    const points = Array.from(
      { length: 130_000 },
      (_, i) => `<trkpt lat="${i / 1e4}" lon="8"><ele>1</ele></trkpt>`,
    );
    expect(outline(gpx(track(points.join(''))))).toEqual(['track 1 "Lake" 130000']);
  });
});

describe('a position that is refused', () => {
  it.each([
    ['lat="51,5" lon="0"', 'latitude "51,5" is not a number'],
    ['lon="0"', 'latitude is missing (attribute lat)'],
    ['lat="51"', 'longitude is missing (attribute lon)'],
    ['lat="" lon="0"', 'latitude "" is not a number'],
    ['lat="north" lon="0"', 'latitude "north" is not a number'],
    ['lat="NaN" lon="0"', 'not a number'],
    ['lat="Infinity" lon="0"', 'not a number'],
    ['lat="151" lon="0"', 'latitude "151" is not between -90 and 90 degrees'],
    ['lat="51" lon="367"', 'longitude "367" is not between -180 and 180 degrees'],
    ['lat="1e999" lon="0"', 'not between'],
    ['lat="51°30\'" lon="0"', 'not a number'],
    ['lat="51.5abc" lon="0"', 'not a number'],
    ['lat="0x33" lon="0"', 'not a number'],
    ['lat="51500000" lon="0"', 'not between'],
    ['lat="5 1" lon="0"', 'not a number'],
    ['lat="٥١" lon="0"', 'not a number'],
    ['lat="1_0" lon="0"', 'not a number'],
    ['LAT="51" LON="0"', 'latitude is missing'],
    ['v:lat="51" v:lon="0" xmlns:v="urn:v"', 'latitude is missing'],
  ])('%s', (attributes, reason) => {
    const text = gpx(
      `<trk><trkseg>${TWO_POINTS}</trkseg></trk>\n<trk><name>Lake</name><trkseg>${TWO_POINTS}</trkseg>\n<trkseg>${TWO_POINTS}\n<trkpt ${attributes}/></trkseg></trk>`,
    );
    const message = refused(readGpx(text));
    expect(message).toMatch(/^Line 6: track 2 "Lake", segment 2, point 3: /u);
    expect(message).toContain(reason);
  });

  it('names the point of a route, and a shape point by its route point', () => {
    const route = (inside: string) =>
      gpx(`<rte><rtept lat="1" lon="1">${inside}</rtept><rtept lat="x" lon="1"/></rte>`);
    expect(refused(readGpx(route('')))).toContain('Line 3: route 1, point 2: latitude "x"');
    expect(refused(readGpx(route('<rpt lat="1" lon="999"/>')))).toContain(
      'route 1, a shape point of point 1',
    );
  });
});

describe('a file that is refused', () => {
  const good = gpx(track());
  it.each([
    ['empty', '', 'The file is empty'],
    ['blank', ' \n\t\n', 'The file is empty'],
    ['only NULs', '\0\0\0', 'The file is empty'],
    ['text', 'hello', 'This is some other kind of file, not a GPX file'],
    ['a PDF by the name of a drive', '%PDF-1.4', 'This is a PDF, a page to read or print, not a GPX file'],
    [
      'a vehicle card',
      '{"format":"lanegauge.vehicle"}',
      'This is a vehicle card, not a drive. Open it under Cards…',
    ],
    ['JSON', ' {"type":"FeatureCollection"}', 'This is JSON'],
    ['a web page', '<html><body>404</body></html>', 'this is a web page'],
    ['a web page with a DOCTYPE', '<!DOCTYPE html><html></html>', 'this is a web page'],
    ['KML', '<kml xmlns="http://www.opengis.net/kml/2.2"/>', 'this is a KML file'],
    ['TCX', '<TrainingCenterDatabase/>', 'this is a TCX file'],
    ['an OSM map', '<osm version="0.6"/>', 'this is an OSM map'],
    ['gpx inside another root', `<x>${track()}</x>`, 'the outermost element is "x"'],
    ['another root with tracks', `<notgpx>${track()}</notgpx>`, 'the outermost element is "notgpx"'],
    ['a root named as a built-in', '<constructor/>', 'the outermost element is "constructor"'],
    ['no track', gpx(''), 'holds no track and no route'],
    ['an empty track', gpx('<trk/>'), '1 track or route without any position'],
    ['empty segments', gpx('<trk><trkseg/></trk><rte/>'), '2 tracks or routes without any position'],
    ['only waypoints', gpx('<wpt lat="1" lon="1"/>'), 'only single places (1 waypoint)'],
    [
      'a single point',
      gpx(track('<trkpt lat="1" lon="1"/>')),
      'No track or route has two positions in a row',
    ],
    [
      'single points in several segments',
      gpx('<trk><trkseg><trkpt lat="1" lon="1"/></trkseg><trkseg><trkpt lat="1" lon="1"/></trkseg></trk>'),
      'No track or route has two positions in a row (positions in all: 2)',
    ],
    ['a point outside a segment', gpx('<trk><trkpt lat="1" lon="1"/></trk>'), 'Line 3: "trkpt" stands where'],
    [
      'a point that lost its bracket',
      gpx(track(`${TWO_POINTS}trkpt lat="1" lon="1"/>`)),
      'Line 3: text "trkpt lat=',
    ],
    ['a misspelt point', gpx(track(`${TWO_POINTS}<TrkPt LAT="1" LON="1"/>`)), 'Line 3: "TrkPt" stands where'],
    ['a track inside an unknown element', gpx(`<folder>${track()}</folder>`), 'Line 3: "trk" stands where'],
    ['cut in a tag', good.slice(0, good.indexOf('50.01')), 'Line 3: the file is not sound XML'],
    ['cut between two points', good.slice(0, good.indexOf('<trkpt lat="50.01')), 'unclosed tag'],
    ['cut before the last tag', good.slice(0, good.indexOf('</gpx>')), 'unclosed tag: gpx'],
    ['tags crossed', good.replace('</trkseg></trk>', '</trk></trkseg>'), 'unexpected close tag'],
    ['a bare ampersand', gpx(track(TWO_POINTS, 'A & B')), 'not sound XML'],
    ['a bare ampersand after a good track', gpx(`${track()}${track(TWO_POINTS, 'A & B')}`), 'not sound XML'],
    [
      'an undeclared prefix',
      gpx(track().replace('<trkseg>', '<x:y/><trkseg>')),
      'the prefix "x" is not declared',
    ],
    [
      'an undeclared attribute prefix',
      gpx(track().replace('<trkseg>', '<trkseg x:y="">')),
      'the prefix "x" is not declared',
    ],
    ['an attribute twice', gpx(track('<trkpt lat="1" lon="1" lat="2"/>')), 'duplicate attribute: lat'],
    [
      'an attribute twice under two prefixes',
      gpx(track().replace('<trkseg>', '<trkseg a:x="" b:x="">'), 'xmlns:a="u" xmlns:b="u"'),
      'the attribute "b:x" stands twice',
    ],
    ['a name of two colons', gpx('<a:b:c xmlns:a="u"/>'), 'malformed'],
    ['a declared nothing', gpx('<a xmlns:a=""/>'), 'declared with nothing'],
    ['the prefix xml redefined', gpx('<a xmlns:xml="u"/>'), 'prefix xml'],
    ['the prefix xmlns declared', gpx('<a xmlns:xmlns="u"/>'), 'prefix xmlns'],
    ['a control character', gpx(track(TWO_POINTS, 'a\u0001')), 'disallowed character'],
    [
      'half a character',
      gpx(track(TWO_POINTS, 'a\uD800')),
      'Line 3: the file is not sound XML (half a character)',
    ],
    ['two documents', good + good, 'Line 5'],
    ['text after the end', `${good}x`, 'text data outside of root'],
    ['an unknown entity', gpx(track(TWO_POINTS, '&nbsp;')), 'undefined entity'],
    ['a DOCTYPE', good.replace('<gpx', '<!DOCTYPE gpx>\n<gpx'), 'Line 2: the file has a DOCTYPE'],
    [
      'an external entity',
      good.replace('<gpx', '<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]><gpx'),
      'DOCTYPE',
    ],
    [
      'an external DTD',
      good.replace('<gpx', '<!DOCTYPE gpx SYSTEM "http://127.0.0.1/x.dtd"><gpx'),
      'DOCTYPE',
    ],
    [
      'a parameter entity',
      good.replace('<gpx', '<!DOCTYPE gpx [<!ENTITY % p SYSTEM "x"> %p;]><gpx'),
      'DOCTYPE',
    ],
    [
      'points hidden in an entity',
      good.replace('<gpx', `<!DOCTYPE gpx [<!ENTITY p '<trkpt lat="1" lon="1"/>'>]><gpx`),
      'DOCTYPE',
    ],
    [
      'an entity bomb',
      good.replace(
        '<gpx',
        `<!DOCTYPE gpx [<!ENTITY a "${'x'.repeat(1000)}"><!ENTITY b "${'&a;'.repeat(1000)}">]><gpx`,
      ),
      'DOCTYPE',
    ],
    ['a million tracks', gpx(track() + '<trk/>'.repeat(1_000_000)), 'more than 100000 tracks and segments'],
    ['a million levels', gpx('<a>'.repeat(1_000_000)), 'nested more than'],
    [
      'ten thousand attributes',
      gpx(`<a ${Array.from({ length: 10_000 }, (_, i) => `a${i}=""`).join(' ')}/>`),
      'too many attributes',
    ],
  ])('%s', (_, text, reason) => {
    expect(refused(readGpx(text))).toContain(reason);
  });

  it('is told its line, leading blank lines counted', () => {
    expect(refused(readGpx(`\n\r\n\r${gpx(track('<trkpt lat="x" lon="1"/>'))}`))).toMatch(/^Line 6: /u);
  });

  it('quotes long and hostile text shortly', () => {
    const message = refused(readGpx(gpx(track('<trkpt lat="x" lon="1"/>', 'n'.repeat(10_000)))));
    expect(message.length).toBeLessThan(300);
  });
});
