import { execFileSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { WAY_KIND } from '../../../../geo/roads/roads.ts';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';

const write = scratchFiles();

async function open(name: string, content: string | Uint8Array) {
  return openMap([write(name, content)], undefined);
}

async function refusal(name: string, content: string | Uint8Array) {
  const result = await open(name, content);
  return result.ok ? undefined : result.error;
}

const PLAIN = `<?xml version="1.0" encoding="UTF-8"?>
<osm version="0.6" generator="Overpass API">
  <note>The data is under ODbL</note>
  <meta osm_base="2026-03-01T12:00:00Z"/>
  <bounds minlat="50" minlon="7" maxlat="51" maxlon="8"/>
  <node id="1" lat="50.1" lon="7.1"/>
  <node id="2" lat="50.2" lon="7.2"><tag k="barrier" v="gate"/></node>
  <way id="10"><nd ref="1"/><nd ref="2"/><tag k="highway" v="service"/><tag k="name" v="A &amp; B &#228;"/></way>
  <relation id="5"><member type="way" ref="10" role="from"/><member type="node" ref="2" role="via"/>
    <member type="way" ref="10" role="to"/><tag k="type" v="restriction"/><tag k="restriction" v="no_u_turn"/></relation>
</osm>
`;

describe('an OSM XML map', () => {
  it('gives its roads, tagged nodes, restrictions and date', async () => {
    const roads = worked(await open('plain.osm', PLAIN));
    expect(roads.ways.tags).toEqual([{ highway: 'service', name: 'A & B ä' }]);
    expect([...roads.nodes.id]).toEqual([1, 2]);
    expect([...roads.nodes.tags]).toEqual([[1, { barrier: 'gate' }]]);
    expect(roads.restrictions[0]).toMatchObject({ from: [10], to: [10], viaNodes: [2] });
    expect(roads.sources[0]?.dataDate).toBe('2026-03-01T12:00:00Z');
  });

  it('reads the same gzipped, with a byte order mark, or under any name', async () => {
    const plain = worked(await open('a.osm', PLAIN));
    for (const [name, content] of [
      ['a.osm.gz', gzipSync(PLAIN)],
      ['bom.osm', `\uFEFF${PLAIN}`],
      ['wrong-name.pbf', PLAIN],
    ] as const) {
      const roads = worked(await open(name, content));
      expect(roads.ways).toEqual(plain.ways);
      expect(roads.nodes).toEqual(plain.nodes);
    }
  });

  it('of an editor has single quotes, negative ids, and deleted things that are left out', async () => {
    const roads = worked(
      await open(
        'editor.osm',
        `<?xml version='1.0' encoding='UTF-8'?>
<osm version='0.6' upload='never' generator='JOSM'>
  <node id='-1' action='modify' visible='true' lat='50.1' lon='7.1' />
  <node id='-2' action='modify' lat='50.2' lon='7.2' />
  <node id='3' action='delete' lat='50.3' lon='7.3'><tag k='place' v='town' /></node>
  <way id='-10' action='modify'><nd ref='-1' /><nd ref='-2' /><tag k='highway' v='track' /></way>
  <way id='11' action='delete'><nd ref='-1' /><nd ref='-2' /><tag k='highway' v='track' /></way>
  <way id='12' visible='false'><nd ref='-1' /><nd ref='-2' /><tag k='highway' v='track' /></way>
</osm>`,
      ),
    );
    expect([...roads.ways.id]).toEqual([-10]);
    expect([...roads.nodes.id]).toEqual([-2, -1]);
  });

  it("keeps another file's new things apart, whose ids below zero are the same", async () => {
    const file = (lat: number) =>
      `<osm version='0.6'><node id='-1' lat='${lat}' lon='7'/><node id='-2' lat='${lat + 0.1}' lon='7'/>
      <way id='-3'><nd ref='-1'/><nd ref='-2'/><tag k='highway' v='service'/></way>
      <relation id='-4'><member type='way' ref='-3' role='from'/><member type='node' ref='-2' role='via'/>
      <member type='way' ref='-3' role='to'/><tag k='type' v='restriction'/></relation></osm>`;
    const roads = worked(
      await openMap([write('west.osm', file(50)), write('east.osm', file(60))], undefined),
    );
    expect(roads.ways.count).toBe(2);
    expect([...roads.nodes.lat].sort()).toEqual([50, 50.1, 60, 60.1]);
    expect(roads.notes).toEqual([]);
    expect(roads.restrictions.map(({ from }) => from[0]).sort()).toEqual([...roads.ways.id].sort());
    for (const { viaNodes } of roads.restrictions) expect(roads.nodes.id).toContain(viaNodes[0]);
  });

  it('with a square drawn as a relation has no road along its edge', async () => {
    const roads = worked(
      await open(
        'square.osm',
        `<osm version='0.6'><node id='1' lat='50' lon='7'/><node id='2' lat='50.001' lon='7'/>
        <node id='3' lat='50.001' lon='7.001'/><way id='3'><nd ref='1'/><nd ref='2'/><nd ref='3'/><nd ref='1'/></way>
        <relation id='9'><member type='way' ref='3' role='outer'/><tag k='type' v='multipolygon'/>
        <tag k='highway' v='pedestrian'/></relation></osm>`,
      ),
    );
    expect([...roads.ways.kind]).toEqual([WAY_KIND.around]);
  });

  it('may carry places on its node references', async () => {
    const roads = worked(
      await open(
        'geom.osm',
        `<osm version="0.6"><way id="10"><bounds minlat="1" minlon="1" maxlat="2" maxlon="2"/>
        <nd ref="1" lat="50.1" lon="7.1"/><nd ref="2" lat="50.2" lon="7.2"/><nd ref="3"/><tag k="highway" v="track"/></way></osm>`,
      ),
    );
    expect([...roads.nodes.lat]).toEqual([50.1, 50.2]);
    expect(roads.notes.join()).toMatch(/1 road lacks/u);
  });

  it('with a remark is incomplete, and that is said with the remark', async () => {
    const roads = worked(
      await open('remark.osm', PLAIN.replace('</osm>', '<remark> runtime error: timed out </remark></osm>')),
    );
    expect(roads.notes.join()).toMatch(/incomplete \("runtime error: timed out"\)/u);
    expect(roads.incomplete?.join()).toMatch(/timed out/u);
  });

  for (const [what, code, content] of [
    ['a change file', 'map.change', '<osmChange version="0.6"><create/></osmChange>'],
    [
      'a difference between two dates',
      'map.change',
      '<osm><action type="create"><node id="1"/></action></osm>',
    ],
    ['a DOCTYPE', 'map.doctype', '<!DOCTYPE osm [<!ENTITY a "b">]><osm/>'],
    ['an entity of its own', 'map.damaged', '<osm><node id="1" lat="1" lon="&x;"/></osm>'],
    ['a drive', 'map.gpx', '<gpx version="1.1"/>'],
    ['a web page', 'map.unknown', '<html><body>504 Gateway Timeout</body></html>'],
    ['a web page with a DOCTYPE', 'map.unknown', '<!DOCTYPE html><html><body>Log in</body></html>'],
    ['zero bytes', 'map.damaged', '\0'.repeat(9000)],
    ['an id that is none', 'map.damaged', '<osm><node id="0x10" lat="1" lon="1"/></osm>'],
    ['an id beyond 2^53', 'map.damaged', '<osm><node id="9007199254740993" lat="1" lon="1"/></osm>'],
    ['a decimal comma', 'map.damaged', '<osm><node id="1" lat="50,1" lon="1"/></osm>'],
    ['half a place', 'map.damaged', '<osm><node id="1" lat="50.1"/></osm>'],
    ['a place off the Earth', 'map.damaged', '<osm><node id="1" lat="90.5" lon="1"/></osm>'],
    [
      'another encoding',
      'map.damaged',
      Buffer.from('<osm><node id="1" lat="1" lon="1"><tag k="name" v="\xfcber"/></node></osm>', 'latin1'),
    ],
  ] as const)
    it(`with ${what} is refused`, async () => {
      expect(await refusal('refused.osm', content)).toMatchObject({ code });
    });

  it('cut short is refused with its line', async () => {
    const error = await refusal('cut.osm', PLAIN.slice(0, PLAIN.indexOf('<relation')));
    expect(error?.message).toMatch(/cut short.*line 9/u);
    const packed = gzipSync(PLAIN);
    expect((await refusal('cut.osm.gz', packed.subarray(0, packed.length - 20)))?.message).toMatch(/gzip/u);
  });
});

const node1 = { type: 'node', id: 1, lat: 50.1, lon: 7.1 };
const node2 = { type: 'node', id: 2, lat: 50.2, lon: 7.2, tags: { barrier: 'gate' } };
const lane = { type: 'way', id: 10, nodes: [1, 2], tags: { highway: 'service' } };
const answer = (elements: readonly unknown[], more = {}) =>
  JSON.stringify({
    version: 0.6,
    generator: 'Overpass API',
    osm3s: { timestamp_osm_base: '2026-03-01T12:00:00Z' },
    elements,
    ...more,
  });

describe('an Overpass answer', () => {
  it('of "out body" gives its roads, whatever the order', async () => {
    for (const elements of [
      [node1, node2, lane],
      [lane, node2, node1],
    ]) {
      const roads = worked(await open('body.json', answer(elements)));
      expect([...roads.ways.id]).toEqual([10]);
      expect([...roads.nodes.lat]).toEqual([50.1, 50.2]);
      expect([...roads.nodes.tags]).toEqual([[1, { barrier: 'gate' }]]);
      expect(roads.sources[0]?.dataDate).toBe('2026-03-01T12:00:00Z');
    }
  });

  it('of "out geom" has places on its ways; where one is null the road is cut and that is said', async () => {
    const geometry = [{ lat: 50.1, lon: 7.1 }, { lat: 50.2, lon: 7.2 }, null];
    const roads = worked(
      await open('geom.json', answer([{ ...lane, nodes: [1, 2, 3], bounds: {}, geometry }])),
    );
    expect([...roads.nodes.id]).toEqual([1, 2]);
    expect(roads.notes.join()).toMatch(/1 road lacks/u);
  });

  it('with a remark is incomplete, and that is said', async () => {
    const roads = worked(
      await open('remark.json', answer([node1], { remark: 'runtime error: out of memory' })),
    );
    expect(roads.notes.join()).toMatch(/incomplete/u);
    expect(roads.incomplete).toHaveLength(1);
  });

  it('with roads and none of their nodes says what to ask for', async () => {
    const roads = worked(await open('bare.json', answer([lane])));
    expect(roads.ways.count).toBe(0);
    expect(roads.notes.join()).toMatch(/none of the nodes of 1 road/u);
  });

  for (const [what, code, content] of [
    ['GeoJSON', 'map.geojson', '{"type":"FeatureCollection","features":[]}'],
    ['a vehicle card', 'map.own', '{"format":"lanegauge.vehicle"}'],
    ['a PDF', 'map.packed', '%PDF-1.4'],
    ['JSON of another sort', 'map.json', '{"name":"card"}'],
    ['a list', 'map.json', '[1,2]'],
    ['a cut answer', 'map.damaged', answer([node1, lane]).slice(0, -9)],
    ['ways without nodes', 'map.element', answer([{ type: 'way', id: 10, tags: {} }])],
    ['a node without a place', 'map.element', answer([{ type: 'node', id: 1 }])],
    ['a number in a text', 'map.element', answer([{ ...node1, lat: '50.1' }])],
    ['a tag that is a number', 'map.element', answer([{ ...node1, tags: { height: 3 } }])],
    ['a count', 'map.element', answer([{ type: 'count', id: 0, tags: {} }])],
    ['more places than nodes', 'map.element', answer([{ ...lane, geometry: [null] }])],
  ] as const)
    it(`that is ${what} is refused`, async () => {
      expect(await refusal('refused.json', content)).toMatchObject({ code });
    });
});

describe('a file that is no map', () => {
  for (const [what, start, todo] of [
    ['bzip2', 'BZh91AY', 'bunzip2'],
    ['a zip archive', 'PK\x03\x04', 'Unpack'],
    ['xz', '\xfd7zXZ\0', 'unxz'],
    ['7z', '7z\xbc\xaf\x27\x1c', 'Unpack'],
    ['a tile database', 'SQLite format 3\0', '.osm.pbf'],
    ['o5m', '\xff\xe0\x04o5m2', 'Convert'],
    ['plain words', 'hello', '.osm.pbf'],
  ] as const)
    it(`but ${what} is refused with what to do`, async () => {
      expect((await refusal('other', Buffer.from(start, 'latin1')))?.message).toContain(todo);
    });

  it('because it is empty, missing, a pipe or a folder is refused in a sentence', async () => {
    expect((await refusal('empty.osm.pbf', ''))?.message).toMatch(/is empty/u);
    const folder = await openMap([import.meta.dirname], undefined);
    expect(folder).toMatchObject({ ok: false, error: { code: 'is-folder' } });
    const pipe = join(dirname(write('beside.osm', PLAIN)), 'pipe.osm');
    execFileSync('mkfifo', [pipe]);
    expect(await openMap([pipe], undefined)).toMatchObject({ ok: false, error: { code: 'not-a-file' } });
    const missing = await openMap(['/no/such/file.osm.pbf'], undefined);
    expect(missing).toMatchObject({ ok: false, error: { code: 'missing' } });
    expect(await openMap([], undefined)).toMatchObject({ ok: false, error: { code: 'map.none' } });
  });
});

describe('two map files that contradict each other', () => {
  const road = (tags: string) =>
    `<osm version="0.6"><node id="1" lat="50.1" lon="7.1"/><node id="2" lat="50.2" lon="7.2"/><way id="10"><nd ref="1"/><nd ref="2"/><tag k="highway" v="service"/>${tags}</way></osm>`;
  const plain = road('');
  const low = road('<tag k="maxheight" v="2.5"/>');

  it('lose no limit that one of them has, in whatever order, and it is said', async () => {
    for (const [a, b] of [
      [plain, low],
      [low, plain],
    ] as const) {
      const roads = worked(await openMap([write('a.osm', a), write('b.osm', b)], undefined));
      expect(roads.ways.tags[0]).toEqual({ highway: 'service', maxheight: '2.5' });
      expect(roads.incomplete?.join(' ')).toContain('different things of one road (way 10)');
    }
  });

  it('are not heard of where they agree', async () => {
    const roads = worked(await openMap([write('a.osm', low), write('b.osm', low)], undefined));
    expect(roads.incomplete ?? []).toEqual([]);
  });
});
