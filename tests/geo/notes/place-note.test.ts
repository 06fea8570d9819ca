import { describe, expect, it } from 'vitest';
import { heldRoad } from '../../../geo/notes/held-road.ts';
import { type NoteFields, noteFieldsSchema } from '../../../geo/notes/note.ts';
import { placeNote, roadAt } from '../../../geo/notes/place-note.ts';
import { roadsFrom } from '../../support/build-roads.ts';
import { at, metres, millLane, note } from '../../support/notes/noted-drive.ts';

function lostOn(sketch: Parameters<typeof roadsFrom>[0], made: NoteFields = note()) {
  const placed = placeNote(made, roadsFrom(sketch));
  return placed.ok ? undefined : placed.lost;
}

function waysHeld(sketch: Parameters<typeof roadsFrom>[0], made: NoteFields) {
  const roads = roadsFrom(sketch);
  const placed = placeNote(made, roads);
  if (!placed.ok) return [];
  return heldRoad(placed.on, roads).map(({ way, fromM, toM }) => ({
    way: roads.ways.id[way],
    fromM: Math.round(fromM),
    toM: Math.round(toM),
  }));
}

const renamed = (sketch: ReturnType<typeof millLane>, tags: Record<string, string>, ids = 0) => ({
  ...sketch,
  ways: sketch.ways.map((way) => ({ ...way, id: way.id + ids, tags: { highway: 'tertiary', ...tags } })),
});

describe('a note on a newer map', () => {
  it('follows its road 20 m, and not 30 m', () => {
    expect(lostOn(millLane({}, { north: 20 }))).toBeUndefined();
    expect(lostOn(millLane({}, { north: 30 }))).toEqual({ why: 'moved', awayM: expect.closeTo(30, 0) });
  });

  it('follows a road whose OSM ids are new by its name, or by its number', () => {
    expect(lostOn(renamed(millLane(), { name: 'Mill Lane' }, 100))).toBeUndefined();
    const numbered = note({ road: { ref: 'B 12;B 14' } });
    expect(lostOn(renamed(millLane(), { ref: 'B 14' }, 100), numbered)).toBeUndefined();
  });

  it('follows its OSM object through a new name or number', () => {
    expect(lostOn(renamed(millLane(), { name: 'Water Lane' }))).toBeUndefined();
  });

  it('is lost where id, name and number are all new, where the road is gone, and on the crossed road', () => {
    expect(lostOn(renamed(millLane(), { name: 'Water Lane', ref: 'C 7' }, 100))).toEqual({
      why: 'other road',
    });
    const sketch = millLane();
    expect(lostOn({ ...sketch, ways: sketch.ways.slice(1) })).toEqual({ why: 'no road' });
  });

  it('made on a road without name or number follows the nearest of its class', () => {
    const nameless = note({ road: { class: 'track' } });
    expect(lostOn(renamed(millLane(), {}, 100), nameless)).toEqual({ why: 'other road' });
    expect(lostOn(renamed(millLane(), { highway: 'track' }, 100), nameless)).toBeUndefined();
  });

  it('on a point follows the point 20 m and not 30 m, whatever the road does', () => {
    const onPoint = note({ at: at(300, 0), osm: { type: 'node', id: 2 } });
    const moved = (east: number) => millLane({}, { nodes: { b: metres(300 + east, 0) } });
    expect(lostOn(moved(20), onPoint)).toBeUndefined();
    expect(lostOn(moved(30), onPoint)).toEqual({ why: 'moved', awayM: expect.closeTo(30, 0) });
  });
});

describe('the road a note holds on', () => {
  it('is 25 m either way of its place', () => {
    expect(waysHeld(millLane(), note())).toEqual([
      { way: 1, fromM: 250, toM: 275 },
      { way: 1, fromM: 225, toM: 250 },
    ]);
  });

  it('goes on over the joint of its ways, and into no other road', () => {
    expect(waysHeld(millLane(), note({ at: at(490, 0) }))).toEqual([
      { way: 1, fromM: 490, toM: 500 },
      { way: 1, fromM: 465, toM: 490 },
      { way: 2, fromM: 0, toM: 15 },
    ]);
  });

  it('comes to an end where the road comes back to itself within a hair', () => {
    const lane = { highway: 'tertiary', name: 'Mill Lane' };
    const sketch = millLane(
      {},
      {
        nodes: { f: metres(500, 1e-6), g: metres(500, 2e-6) },
        ways: [
          { id: 7, refs: ['c', 'f', 'g', 'c'], tags: lane },
          { id: 8, refs: ['g', 'f', 'c'], tags: lane },
        ],
      },
    );
    const ways = waysHeld(sketch, note({ at: at(490, 0) })).map(({ way }) => way);
    expect([...new Set(ways)].sort()).toEqual([1, 2, 7, 8]);
  });

  it('without a name ends where other roads join', () => {
    const nameless = renamed(millLane(), {});
    const made = note({ at: at(490, 0), road: { class: 'tertiary' } });
    expect(waysHeld(nameless, made).map(({ way }) => way)).toEqual([1, 1]);
    const joint = { ...nameless, ways: nameless.ways.slice(0, 2) };
    expect(waysHeld(joint, made).map(({ way }) => way)).toEqual([1, 1, 2]);
  });
});

describe('a note when it is made', () => {
  it('takes the nearest road within 25 m with it', () => {
    expect(roadAt(at(250, 10), roadsFrom(millLane({ ref: 'B 12' })))).toEqual({
      osm: { type: 'way', id: 1 },
      road: { name: 'Mill Lane', ref: 'B 12', class: 'tertiary' },
    });
    expect(roadAt(at(250, 40), roadsFrom(millLane()))).toBeUndefined();
  });

  it.each([
    [{ by: 'ABCDEFG' }],
    [{ by: ' ' }],
    [{ say: '' }],
    [{ say: 'x'.repeat(501) }],
    [{ heightM: 34 }],
    [{ widthM: 0.1 }],
    [{ massKg: 3.5 }],
    [{ answers: { finding: '' } }],
    [{ until: '2026-02-30' }],
    [{ headingDeg: -1 }],
    [{ at: { lat: 91, lon: 0 } }],
  ])('is refused with %o', (fields) => {
    const { id: _, ...good } = note();
    expect(noteFieldsSchema.safeParse(good).success).toBe(true);
    expect(noteFieldsSchema.safeParse({ ...good, ...fields }).success).toBe(false);
  });
});
