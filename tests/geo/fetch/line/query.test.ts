import { describe, expect, it } from 'vitest';
import type { Piece } from '../../../../geo/fetch/line/piece.ts';
import { areasQuery, pieceQuery } from '../../../../geo/fetch/line/query.ts';
import { isStandingNode, wayKind } from '../../../../geo/roads/keep.ts';
import { parseQuery, type Statement } from '../../../support/map-server/parse-query.ts';

const PIECE: Piece = {
  spans: [{ fromM: 0, toM: 2000 }],
  along: {
    places: [
      { lat: 50, lon: 8 },
      { lat: 50.0123456789, lon: 8.01 },
    ],
    radiusM: 150,
  },
  box: { south: 49.998, north: 50.02, west: 7.99, east: 8.02 },
};
const BUDGET = { timeoutS: 60, maxBytes: 2 ** 27 };
const text = pieceQuery(PIECE, BUDGET);

function finds(statements: readonly Statement[]): (Statement & { is: 'find' })[] {
  return statements.flatMap((one) =>
    one.is === 'union' ? finds(one.parts) : one.is === 'find' ? [one] : [],
  );
}

/** Whether a node or way of these tags, right on the line, would be asked for. */
function asksFor(type: 'node' | 'way', tags: Readonly<Record<string, string>>): boolean {
  return finds(parseQuery(text).statements).some(
    ({ type: of, by }) =>
      of === type &&
      by.some(({ is }) => is === 'around') &&
      by.some(({ is }) => is === 'tag') &&
      by.every(
        (filter) =>
          filter.is !== 'tag' || (filter.fits(tags[filter.key] ?? '') === true && filter.key in tags),
      ),
  );
}

describe('the question about a piece', () => {
  it('says what it may cost, and asks for bodies alone: no skeletons, which lack tags, and no mappers', () => {
    expect(
      text.startsWith(
        '[out:json][timeout:60][maxsize:134217728];\n(\nway["highway"](around:150,50,8,50.01235,8.01)(49.998,7.99,50.02,8.02);\n',
      ),
    ).toBe(true);
    expect(text).not.toMatch(/out (?:skel|meta|center|geom|count)|\[bbox|\[date/);
    expect(text).toContain('.w out body;\nnode(w.w);\nout body;\n');
  });

  it('puts a box beside each strip, and no box over all', () => {
    for (const line of text.split('\n'))
      if (line.includes('around'))
        expect(line).toMatch(/\(around:[^)]*\)\(-?[\d.]+,-?[\d.]+,-?[\d.]+,-?[\d.]+\)(?:;|->\.e;)$/);
  });

  it.each([
    { highway: 'residential' },
    { highway: 'track' },
    { route: 'ferry' },
    { railway: 'rail' },
    { waterway: 'river' },
    { natural: 'wood' },
    { landuse: 'forest' },
    { building: 'yes' },
    { man_made: 'bridge' },
    { bridge: 'yes' },
    { historic: 'city_gate' },
    { barrier: 'wall' },
    { boundary: 'low_emission_zone' },
    { tourism: 'camp_site' },
  ])('asks for ways that are kept: %j', (tags: Record<string, string>) => {
    expect(wayKind(tags)).toBeDefined();
    expect(asksFor('way', tags)).toBe(true);
  });

  it.each([
    { place: 'town' },
    { amenity: 'sanitary_dump_station' },
    { tourism: 'caravan_site' },
    { natural: 'tree' },
  ])('asks for nodes that stand alone: %j', (tags: Record<string, string>) => {
    expect(isStandingNode(tags)).toBe(true);
    expect(asksFor('node', tags)).toBe(true);
  });

  it('does not ask for what nobody keeps', () => {
    expect(asksFor('way', { boundary: 'administrative' })).toBe(false);
    expect(asksFor('way', { power: 'line' })).toBe(false);
    expect(asksFor('node', { amenity: 'bench' })).toBe(false);
  });

  it('looks for tanks and nights 5 km off, and for ferries 500 m', () => {
    expect(text).toMatch(/node\["amenity"~"\^\(fuel\|sanitary_dump_station\|[a-z_|]+\)\$"\]\(around:5500,/);
    expect(text).toMatch(/way\["route"="ferry"\]\(around:500,/);
  });

  it('about a square asks for its box alone', () => {
    const { along: _, ...square } = PIECE;
    expect(pieceQuery(square)).not.toContain('around');
    expect(pieceQuery(square)).toContain('way["highway"](49.998,7.99,50.02,8.02);');
  });

  it('is the same whatever may be spent on it, but for its first line', () => {
    const less = pieceQuery(PIECE, { timeoutS: 15, maxBytes: 2 ** 25 });
    expect(less.split('\n').slice(1).join('\n')).toBe(pieceQuery(PIECE));
  });
});

it('the question about areas asks for zones whole, land that is not too large, and the country as a proof', () => {
  const asked = areasQuery(
    [
      { lat: 50, lon: 8 },
      { lat: -1.5, lon: 180 },
    ],
    BUDGET,
  );
  expect(asked).toContain('(\nis_in(50,8);\nis_in(-1.5,180);\n)->.p;');
  expect(asked).toContain('["boundary"="administrative"]["admin_level"="2"];\nout tags;');
  expect(asked).toMatch(/rel\(pivot\.p\)\["boundary"~"[^"]*low_emission_zone[^"]*"\];/);
  expect(asked).toContain('rel(pivot.p)["landuse"](if:count_members()<=200);');
  expect(() => parseQuery(asked)).not.toThrow();
});
