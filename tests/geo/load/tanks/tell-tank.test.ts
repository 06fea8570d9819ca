import { describe, expect, it } from 'vitest';
import { litresIn, setTank } from '../../../../geo/load/places/in-tank.ts';
import { sayTank } from '../../../../geo/load/tanks/say-tanks.ts';
import { tellTank } from '../../../../geo/load/tanks/tell-tank.ts';
import { weigh } from '../../../../geo/load/weigh/weigh.ts';
import type { Tank } from '../../../../geo/vehicle/card.ts';
import type { Liquid } from '../../../../geo/vehicle/liquids.ts';
import { COACH_BUILT, FAMILY } from '../family.ts';

function tankOf(holds: Liquid): Tank {
  const found = COACH_BUILT.tanks?.find((tank) => tank.holds === holds);
  if (!found) throw new Error(`no tank of ${holds}`);
  return found;
}
const WATER = tankOf('fresh-water');
const WASTE = tankOf('waste-water');
const FUEL = tankOf('fuel');
const grossKg = (items: Parameters<typeof weigh>[1]) => {
  const found = weigh(COACH_BUILT, items);
  return found.ok ? found.value.grossKg : Number.NaN;
};
const said = (...tank: Parameters<typeof tellTank>) => sayTank(tellTank(...tank));

describe('a tank', () => {
  it('of water is filled and emptied in one line of the list', () => {
    const full = setTank(COACH_BUILT, [], WATER, 110);
    expect(full).toHaveLength(1);
    expect(litresIn(COACH_BUILT, full, WATER)).toBeCloseTo(110, 9);
    expect(setTank(COACH_BUILT, full, WATER, 0)).toEqual([]);
  });

  it('says at which litre the plate is reached', () => {
    // 26 kg over with 100 l in it
    const told = tellTank(COACH_BUILT, FAMILY, WATER);
    expect(told.reach).toEqual({ kind: 'reached at', limit: 'gross', litres: expect.closeTo(74, 6) });
    expect(sayTank(told)[0]).toBe('At 74 litres the gross plate is reached.');
  });

  it('says so where a plate is over without it', () => {
    expect(said(COACH_BUILT, FAMILY, WASTE)[0]).toBe('The gross plate is over even with it empty.');
    expect(said(COACH_BUILT, [], WASTE)[0]).toBe('Full, it keeps every plate.');
  });

  it('that the empty weight holds full says so too, and a plate just reached is not over', () => {
    expect(said(COACH_BUILT, FAMILY, tankOf('adblue'))).toEqual([
      'The gross plate is over even with it empty.',
    ]);
    const reached = setTank(COACH_BUILT, FAMILY, WATER, 74);
    expect(said(COACH_BUILT, reached, WASTE)[0]).toBe('The gross plate is reached even with it empty.');
    // 26 kg over: 31.3 l of diesel less than the 81 l of the empty weight
    expect(said(COACH_BUILT, FAMILY, FUEL)[0]).toBe('At 49 litres the gross plate is reached.');
  });

  it('says what emptying does to both axles', () => {
    const items = setTank(COACH_BUILT, [], WASTE, 80);
    // 80 kg at 3.1 m of a wheelbase of 4.035 m
    expect(said(COACH_BUILT, items, WASTE)[1]).toBe('Emptying it: front −19, rear −61 kg.');
  });

  it('of fuel stands at 90 % in the empty weight, and only what is beyond or below is listed', () => {
    expect(litresIn(COACH_BUILT, [], FUEL)).toBeCloseTo(81, 9);
    const full = setTank(COACH_BUILT, [], FUEL, 90);
    expect(full[0]?.massKg).toBeCloseTo(9 * 0.83, 9);
    const low = setTank(COACH_BUILT, full, FUEL, 11);
    expect(low[0]?.massKg).toBeCloseTo(-70 * 0.83, 9);
    expect(litresIn(COACH_BUILT, low, FUEL)).toBeCloseTo(11, 9);
    expect(grossKg(low)).toBeCloseTo(3080 - 70 * 0.83, 9);
    expect(setTank(COACH_BUILT, low, FUEL, 81)).toEqual([]);
  });
});
