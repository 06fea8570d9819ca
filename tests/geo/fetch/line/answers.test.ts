import { describe, expect, it } from 'vitest';
import type { Element } from '../../../../geo/fetch/line/element.ts';
import { holdsRoad } from '../../../../geo/fetch/line/holds-road.ts';
import { AnswerMerger, oldestDate } from '../../../../geo/fetch/line/merge-answers.ts';
import type { Piece } from '../../../../geo/fetch/line/piece.ts';
import { readAnswer } from '../../../../geo/fetch/line/read-answer.ts';
import { readStatus } from '../../../../geo/fetch/line/read-status.ts';
import { joinSpans } from '../../../../geo/fetch/line/spans.ts';
import { readOverpassJson } from '../../../../geo/roads/read-json.ts';

const NODE = { type: 'node', id: 1, lat: 50, lon: 8 } as const;
const WAY = { type: 'way', id: 2, nodes: [1, 3], tags: { highway: 'residential' } } as const;

function answer(elements: readonly unknown[], more: object = {}): string {
  return JSON.stringify({
    version: 0.6,
    osm3s: { timestamp_osm_base: '2026-11-20T00:00:00Z' },
    elements,
    ...more,
  });
}

describe('an answer is told by its contents', () => {
  it.each([
    ['<!DOCTYPE html><html>', 'page'],
    ['\n <?xml version="1.0"?><osm/>', 'foreign'],
    ['<?xml version="1.0"?><osm><remark> runtime error: timeout </remark></osm>', 'error'],
    ['<html><p><strong style="color:#FF0000">Error</strong>: runtime error </p></html>', 'error'],
    ['Too many requests', 'garbled'],
    ['', 'empty'],
    [answer([NODE]).slice(0, -3), 'cut'],
    ['[]', 'foreign'],
    ['{"type":"FeatureCollection","features":[]}', 'foreign'],
    ['{"elements":{}}', 'foreign'],
    [answer([NODE], { remark: 'runtime error: out of memory' }), 'remark'],
    [answer([]), 'answer'],
  ])('%j is %s', (text, kind) => {
    expect(readAnswer(text).kind).toBe(kind);
  });

  it('and bared of what nobody reads', () => {
    const full = [
      { ...NODE, version: 3, timestamp: 'x', user: 'somebody', uid: 5 },
      { ...WAY, bounds: {}, center: { lat: 1, lon: 2 } },
    ];
    const reading = readAnswer(answer([{ type: 'count', id: 0, tags: {} }, ...full]));
    expect(reading).toEqual({
      kind: 'answer',
      answer: { elements: [NODE, WAY], unfit: 0, baseDate: '2026-11-20T00:00:00Z' },
    });
  });

  it.each([
    ['an id larger than numbers are exact', { ...WAY, id: 2 ** 53 + 2 }],
    ['a node so', { ...WAY, nodes: [1, 2 ** 60] }],
    ['no place', { type: 'node', id: 7 }],
    ['a place that is null', { type: 'node', id: 7, lat: null, lon: null }],
    ['a place off the Earth', { type: 'node', id: 7, lat: 91, lon: 0 }],
    ['a tag that is no text', { ...WAY, tags: { maxheight: 3 } }],
    ['no type', { id: 4 }],
    ['nothing', null],
  ])('and counts one with %s as unfit', (_, element) => {
    expect(readAnswer(answer([NODE, element]))).toMatchObject({ answer: { elements: [NODE], unfit: 1 } });
  });

  it('and has no date where it tells none or nonsense', () => {
    for (const osm3s of [
      undefined,
      {},
      { timestamp_osm_base: '' },
      { timestamp_osm_base: 5 },
      { timestamp_osm_base: 'today' },
    ])
      expect(readAnswer(answer([NODE], { osm3s }))).not.toHaveProperty('answer.baseDate');
  });
});

describe('a road where the drive runs', () => {
  const piece: Piece = {
    spans: [],
    along: {
      places: [
        { lat: 50, lon: 8 },
        { lat: 50, lon: 8.1 },
      ],
      radiusM: 150,
    },
    box: { south: 49.99, north: 50.01, west: 7.99, east: 8.11 },
  };
  const way = (lats: readonly number[], tags: Record<string, string> = { highway: 'track' }): Element[] => [
    ...lats.map((lat, i): Element => ({ type: 'node', id: i, lat, lon: 8.05 })),
    { type: 'way', id: 1, nodes: lats.map((_, i) => i), tags },
  ];

  it('is one with a node near the line, or that crosses it without one', () => {
    expect(holdsRoad(way([50.001, 50.002]), piece)).toBe(true);
    expect(holdsRoad(way([49, 51]), piece)).toBe(true);
    expect(holdsRoad(way([50.001, 50.002], { route: 'ferry' }), piece)).toBe(true);
  });

  it('is none that lies a kilometre off, is no road, or of which no place is known', () => {
    expect(holdsRoad(way([50.009, 50.01]), piece)).toBe(false);
    expect(holdsRoad(way([50, 50.001], { landuse: 'forest' }), piece)).toBe(false);
    expect(holdsRoad([{ type: 'way', id: 1, nodes: [1, 2], tags: { highway: 'track' } }], piece)).toBe(false);
    expect(holdsRoad([], piece)).toBe(false);
  });

  it('is any in a square', () => {
    const { along: _, ...square } = piece;
    expect(holdsRoad(way([50.009, 50.01]), square)).toBe(true);
    expect(holdsRoad(way([49, 51]), square)).toBe(true);
    expect(holdsRoad(way([51, 52]), square)).toBe(false);
  });
});

describe('answers brought together', () => {
  const older = { elements: [NODE, { ...WAY, tags: { highway: 'service' } }], unfit: 0 };
  const newer = { elements: [NODE, WAY, { type: 'node', id: 3, lat: 50, lon: 8.1 }] as Element[], unfit: 0 };
  const merge = (remark?: string) => {
    const merger = new AnswerMerger();
    return [
      merger.begin('2026-11-01T00:00:00Z'),
      merger.add({ elements: [], unfit: 0 }),
      merger.add(newer),
      merger.add(older),
      merger.end(remark),
    ].join('');
  };

  it('hold each thing once, as the newest has it', () => {
    expect(JSON.parse(merge())).toMatchObject({
      elements: newer.elements,
      osm3s: { timestamp_osm_base: '2026-11-01T00:00:00Z' },
    });
    expect(JSON.parse(new AnswerMerger().begin(undefined) + new AnswerMerger().end(undefined))).toMatchObject(
      { elements: [] },
    );
  });

  it('are read like every answer, and as an incomplete one where they lack something', () => {
    const ways: number[] = [];
    const facts = readOverpassJson(merge(), { way: ({ id }) => ways.push(id) });
    expect(ways).toEqual([2]);
    expect(facts).toEqual({ notes: [], incomplete: [], dataDate: '2026-11-01T00:00:00Z' });
    expect(readOverpassJson(merge('2 km "lacking"'), {}).incomplete?.join()).toContain('2 km "lacking"');
  });

  it('are as old as the oldest, and undated where one is', () => {
    expect(oldestDate(['2026-11-20T00:00:00Z', '2026-11-01T00:00:00Z'])).toBe('2026-11-01T00:00:00Z');
    expect(oldestDate(['2026-11-20T00:00:00Z', undefined])).toBeUndefined();
    expect(oldestDate([])).toBeUndefined();
  });
});

describe('a status page', () => {
  it.each([
    ['Connected as: 1\nRate limit: 2\n2 slots available now.\nCurrently running queries:\n', { free: 2 }],
    [
      'Rate limit: 2\n1 slot available now.\nSlot available after: 2026-11-21T08:00:11Z, in 11 seconds.\n',
      { free: 1 },
    ],
    [
      'Rate limit: 2\nSlot available after: 2026-11-21T08:00:11Z, in 11 seconds.\nSlot available after: x, in 4 seconds.\n',
      { waitS: 4 },
    ],
    [
      'Rate limit: 2\n0 slots available now.\nSlot available after: x, in 4 seconds.\n',
      { free: 0, waitS: 4 },
    ],
    ['Rate limit: 0\n', {}],
    ['Slot available after: x, in -3 seconds.', {}],
    ['<html>nonsense</html>', {}],
  ])('%j', (text, status) => {
    expect(readStatus(text)).toEqual(status);
  });
});

it('parts of a drive that touch are told as one', () => {
  const spans = [
    { fromM: 50, toM: 70 },
    { fromM: 0, toM: 10 },
    { fromM: 10.5, toM: 20 },
    { fromM: 5, toM: 8 },
  ];
  expect(joinSpans(spans)).toEqual([
    { fromM: 0, toM: 20 },
    { fromM: 50, toM: 70 },
  ]);
});
