import { describe, expect, it } from 'vitest';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { pbfFile } from '../../../support/pbf-file.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';

const write = scratchFiles();

async function refused(name: string, content: string | Uint8Array): Promise<string> {
  const opened = await openMap([write(name, content)], undefined);
  return opened.ok ? 'taken' : opened.error.message;
}

const NODES = '<node id="1" lat="50" lon="7"/>\n<node id="2" lat="51" lon="7"/>\n';
const osm = (...elements: string[]) => `<osm version="0.6">\n${NODES}${elements.join('\n')}\n</osm>`;
const lane = (inside: string) =>
  osm(`<way id="10"><nd ref="1"/><nd ref="2"/>\n<tag k="highway" v="service"/>${inside}</way>`);

describe('an OSM XML map with what no map holds loses nothing in silence', () => {
  it.each([
    [
      'a misspelt tag',
      lane('<tbg k="maxheight" v="2.5"/>'),
      /way 10 has an element <tbg k="maxheight" v="2.5">.*\(line 5\)/,
    ],
    [
      'a tag that lost its bracket',
      lane('tag k="maxheight" v="2.5"/>'),
      /way 10 has the text .*maxheight.*\(line 5\)/,
    ],
    [
      'a tag inside a tag',
      lane('<tag k="a" v="b"><tag k="maxheight" v="2.5"/></tag>'),
      /way 10 .* inside a tag \(line 5\)/,
    ],
    [
      'a member in a way',
      lane('<member type="node" ref="1" role=""/>'),
      /way 10 has an element <member .*\(line 5\)/,
    ],
    [
      'a misspelt node reference',
      osm('<way id="10"><dn ref="1"/></way>'),
      /way 10 has an element <dn ref="1">.*\(line 4\)/,
    ],
    [
      'a child of a node',
      osm('<node id="3" lat="50" lon="7"><tga k="barrier" v="gate"/></node>'),
      /node 3 has an element <tga/,
    ],
    [
      'a child of a relation',
      osm('<relation id="5"><mebmer type="way" ref="1" role="from"/></relation>'),
      /relation 5 has an element <mebmer/,
    ],
    ['a misspelt way', osm('<wey id="10"><nd ref="1"/></wey>'), /an element <wey id="10">.*\(line 4\)/],
    [
      'a way that lost its bracket',
      osm('way id="10">'),
      /the text "way id=.* stands between its elements \(line 5\)/,
    ],
    ['a control character', lane('<tag k="name" v="a&#1;b"/>'), /\(line 5\)/],
  ])('%s', async (_, content, said) => {
    expect(await refused('map.osm', content)).toMatch(said);
  });

  it('bytes that are no UTF-8 are told with their line', async () => {
    const bytes = Buffer.from(lane('<tag k="name" v="\xfcber"/>'), 'latin1');
    expect(await refused('map.osm', bytes)).toMatch(/not UTF-8 text \(line 5\)/);
  });

  it('but boxes, middles, places of members and notes are what servers write', async () => {
    const content = osm(
      '<note>free text</note><changeset id="3"><tag k="comment" v="x"/></changeset>',
      '<way id="10"><center lat="50" lon="7"/><bounds minlat="1"/><nd ref="1"/><nd ref="2"/><tag k="highway" v="service"/></way>',
      '<relation id="5"><bounds minlat="1"/><member type="way" ref="10" role="from"><nd lat="50" lon="7"/></member></relation>',
    );
    expect(worked(await openMap([write('rich.osm', content)], undefined)).ways.count).toBe(1);
  });
});

describe('an Overpass answer', () => {
  const node = { type: 'node', id: 1, lat: 50, lon: 7 };
  it.each([
    [
      'a misspelt field',
      { ...node, tgas: { barrier: 'gate' } },
      /element 1 \(node 1\) .*its field "tgas" .*did you mean "tags"\?/,
    ],
    [
      'a control character in a value',
      { ...node, tags: { maxheight: '2\u00015' } },
      /element 1 \(node 1\) .*its tags\.maxheight holds control/,
    ],
    [
      'a control character in a key',
      { ...node, tags: { 'max\u0000height': '2' } },
      /element 1 \(node 1\) .*its tags\.max.height holds control/,
    ],
    [
      'half a letter',
      { ...node, tags: { name: '\ud800' } },
      /its tags\.name holds control characters or broken letters/,
    ],
    ['an id that is no whole number', { ...node, id: 1.5 }, /its id is missing or wrong/],
  ])('with %s is refused', async (_, element, said) => {
    expect(await refused('map.json', JSON.stringify({ elements: [element] }))).toMatch(said);
  });

  it('whose bytes are no UTF-8 is refused with the line', async () => {
    const bytes = Buffer.from('{\n"elements": [\n{"type": "\xfc"}]}', 'latin1');
    expect(await refused('map.json', bytes)).toMatch(/not UTF-8 text \(line 3\)/);
  });
});

describe('a PBF map', () => {
  const file = pbfFile(
    [
      {
        nodes: [
          { id: 1, lat: 50, lon: 7 },
          { id: 2, lat: 51, lon: 7 },
        ],
        ways: [{ id: 10, refs: [1, 2], tags: { highway: 'service', maxheight: '2.5' } }],
      },
    ],
    { compression: 'raw' },
  );
  const spoilt = (byte: number) => {
    const bytes = Buffer.from(file);
    bytes[bytes.indexOf('maxheight') + 3] = byte;
    return bytes;
  };

  it.each([
    ['is no UTF-8', 0xff, /text 2 of its table is not sound UTF-8 \(block 2, at byte \d+\)/],
    [
      'holds a control character',
      0x01,
      /text 2 of its table holds control characters \(block 2, at byte \d+\)/,
    ],
  ])('of which a text %s is refused with its place', async (_, byte, said) => {
    expect(await refused('map.osm.pbf', spoilt(byte))).toMatch(said);
  });
});
