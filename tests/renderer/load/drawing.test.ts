import { describe, expect, it } from 'vitest';
import { drawnDriver } from '../../../geo/load/places/seats.ts';
import { inLines } from '../../../geo/units/in-lines.ts';
import { FLOOR_M, flagsOf, layOut } from '../../../renderer/load/drawing/layout.ts';
import { frontToRear, shrinkToFit, stackItems } from '../../../renderer/load/drawing/stack.ts';
import { COACH_BUILT, FAMILY } from '../../geo/load/family.ts';

const MANY = Array.from({ length: 40 }, (_, i) => ({
  name: `Thing ${i}`,
  massKg: 2 + ((i * 7) % 23),
  xM: 1 + ((i * 0.37) % 4.5),
}));

describe('the blocks', () => {
  it('have areas that go by their mass', () => {
    const area = (massKg: number) => {
      const [block] = stackItems([{ name: 'Box', massKg, xM: 2 }], COACH_BUILT, 1);
      return (block?.wideM ?? 0) * (block?.highM ?? 0);
    };
    expect(area(80) / area(20)).toBeCloseTo(4, 9);
    expect(area(-80)).toBe(area(80));
  });

  it('never lie in one another, each over its true place', () => {
    const blocks = stackItems(MANY, COACH_BUILT, 1);
    expect(blocks).toHaveLength(40);
    for (const a of blocks) {
      expect(a.xM).toBe(MANY[a.index]?.xM);
      for (const b of blocks) {
        if (a.index >= b.index) continue;
        const apart =
          Math.abs(a.xM - b.xM) >= (a.wideM + b.wideM) / 2 - 1e-6 ||
          a.upM >= b.upM + b.highM - 1e-6 ||
          b.upM >= a.upM + a.highM - 1e-6;
        expect(apart, `${a.index} and ${b.index}`).toBe(true);
      }
    }
  });

  it('have the heaviest lowest and people on their seats; what is in a tank is not piled', () => {
    const blocks = stackItems(
      [
        { name: 'Light', massKg: 5, xM: 3 },
        { name: 'Heavy', massKg: 50, xM: 3 },
        { name: 'Child', massKg: 30, xM: 1.75, kind: 'person' },
        { name: 'Water', massKg: 80, xM: 2.4, kind: 'fresh-water', place: 'Fresh water tank' },
      ],
      COACH_BUILT,
      1,
    );
    const block = (name: string) => blocks.find(({ item }) => item.name === name);
    const up = (name: string) => block(name)?.upM;
    expect(up('Heavy')).toBe(0);
    expect(up('Light')).toBeGreaterThan(block('Heavy')?.highM ?? 9);
    expect(up('Child')).toBeGreaterThan(0.3);
    expect(up('Water')).toBeUndefined();
  });

  it('show people in front of the things, and the driver whom the empty weight holds', () => {
    const child = { name: 'Child', massKg: 30, xM: 3, kind: 'person' } as const;
    const blocks = stackItems([child, { name: 'Heavy', massKg: 90, xM: 3 }], COACH_BUILT, 1);
    expect(blocks.at(-1)?.item.name).toBe('Child');
    expect(drawnDriver(COACH_BUILT, [])).toMatchObject({ name: 'Driver', massKg: 75 });
    expect(
      drawnDriver(COACH_BUILT, [{ name: 'Driver', massKg: 80, xM: 0.3, kind: 'driver' }]),
    ).toBeUndefined();
  });

  it('are told from front to rear, each pile from below', () => {
    const told = stackItems(
      [
        { name: 'Bicycles', massKg: 40, xM: 5.5 },
        { name: 'Books', massKg: 10, xM: 3 },
        { name: 'Tools', massKg: 30, xM: 3 },
        { name: 'Child', massKg: 30, xM: 1.75, kind: 'person' },
      ],
      COACH_BUILT,
      1,
    ).sort(frontToRear);
    expect(told.map(({ item }) => item.name)).toEqual(['Child', 'Tools', 'Books', 'Bicycles']);
  });

  it('have their name over several lines, broken between words, and cut only where no room is left', () => {
    expect(inLines('Folding table and chairs', 9, 3)).toEqual(['Folding', 'table and', 'chairs']);
    expect(inLines('Folding table and chairs', 9, 2)).toEqual(['Folding', 'table an…']);
    expect(inLines('Bicycles', 9, 3)).toEqual(['Bicycles']);
    expect(inLines('Wheelbarrow, red', 8, 3)).toEqual(['Wheelba…']);
  });

  it('shrink until every pile stays under the roof', () => {
    const room = COACH_BUILT.heightM - FLOOR_M;
    expect(shrinkToFit(FAMILY, COACH_BUILT, room)).toBe(1);
    const shrunk = shrinkToFit(MANY, COACH_BUILT, room);
    expect(shrunk).toBeLessThan(1);
    for (const { upM, highM } of stackItems(MANY, COACH_BUILT, shrunk))
      expect(upM + highM).toBeLessThanOrEqual(room);
  });
});

describe('the paper', () => {
  it('is to one scale along and upright, and holds the vehicle with its rack', () => {
    const at = layOut(COACH_BUILT, 850, 230, 5);
    expect(at.x(1) - at.x(0)).toBeCloseTo(at.y(0) - at.y(1), 9);
    expect(at.x(at.noseM)).toBeGreaterThan(0);
    expect(at.x(at.endM)).toBeLessThan(850);
    expect(at.y(COACH_BUILT.heightM)).toBeGreaterThan(5 * 17 - 1);
  });

  it('has no pole of a place cross the name of another', () => {
    const at = layOut(COACH_BUILT, 850, 230, 0);
    const flags = flagsOf(COACH_BUILT, at.pxPerM);
    expect(flags.map(({ name }) => name)).toContain('Rack');
    for (const flag of flags)
      for (const other of flags) {
        const wideM = (flag.name.length * 7 + 12) / at.pxPerM;
        const crossed = other.xM > flag.xM && other.xM < flag.xM + wideM;
        if (crossed) expect(flag.row, `${other.name} through ${flag.name}`).toBeGreaterThan(other.row);
      }
  });
});
