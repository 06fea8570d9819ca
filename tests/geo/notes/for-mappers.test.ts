import { describe, expect, it } from 'vitest';
import { forMappers, mappersCsv } from '../../../geo/notes/for-mappers.ts';
import { roadsFrom } from '../../support/build-roads.ts';
import { at, millLane, note } from '../../support/notes/noted-drive.ts';

const roads = (tags = {}, more = {}) => roadsFrom(millLane(tags, more));

function stands(tags: Record<string, string>, fields: Parameters<typeof note>[0], more = {}) {
  return forMappers([note(fields)], roads(tags, more)).map((one) => one.stands);
}

describe('the list for whoever maps', () => {
  it('holds what the map lacks, or has otherwise, and nothing that agrees', () => {
    expect(stands({}, { heightM: 3.4 })).toEqual(['not mapped']);
    expect(stands({ maxheight: '3.0' }, { heightM: 3.4 })).toEqual(['mapped lower']);
    expect(stands({ maxheight: '3.9' }, { heightM: 3.4 })).toEqual(['mapped higher']);
    expect(stands({ maxheight: '3.4' }, { heightM: 3.42 })).toEqual([]);
    expect(stands({ maxweight: '7.5' }, { massKg: 3500, widthM: 2.2 })).toEqual([
      'mapped higher',
      'not mapped',
    ]);
    expect(stands({}, { say: 'Bent tree' })).toEqual([]);
  });

  it('sees what is mapped on a point of the road within 25 m', () => {
    const bar = { nodeTags: { b: { barrier: 'height_restrictor', maxheight: '2.2' } } };
    expect(stands({}, { at: at(290, 0), heightM: 2.5 }, bar)).toEqual(['mapped lower']);
    expect(stands({}, { at: at(270, 0), heightM: 2.5 }, bar)).toEqual(['not mapped']);
  });

  const list = forMappers(
    [
      note({ heightM: 2.5, at: at(50, 0), say: '=1+1, "arch"' }),
      note({ id: 'n2', at: at(0, 5000), heightM: 3 }),
      note({ id: 'n3', heightM: 3.4 }),
    ],
    roads({ maxheight: '3.0', ref: 'B 12' }),
  );

  it('is headed by roads that are mapped too low, and ends with those not found', () => {
    expect(list.map((one) => one.note.id)).toEqual(['n3', 'n1', 'n2']);
  });

  it('is a table of rows of one length, in which no text is a formula', () => {
    const [header, first, second] = mappersCsv(list).split('\r\n');
    expect(header?.split(',')).toHaveLength(12);
    expect(first).toBe(
      'mapped lower,height,3.4,m,maxheight=3.0,Mill Lane (B 12),1,52.67,-0.726292,2026-05-01,AB,Low arch',
    );
    expect(second).toContain(`"'=1+1, ""arch"""`);
  });
});

it('a road is called by its name and number, by either, by its class, or just a road; masses are in kilograms', () => {
  const lost = (road: object | undefined) =>
    note({ at: at(0, 5000), massKg: 3500, ...(road && { road }) } as never);
  const { road: _, ...unnamed } = lost(undefined);
  const list = forMappers(
    [lost({ name: 'Mill Lane', ref: 'B 12' }), lost({ ref: 'B 12' }), lost({ class: 'tertiary' }), unnamed],
    roads(),
  );
  expect(list.map(({ road }) => road)).toEqual([
    'Mill Lane (B 12)',
    'B 12',
    'a road without a name (tertiary)',
    'a road',
  ]);
  expect(mappersCsv(list)).toContain('mass,3500,kg,');
});
