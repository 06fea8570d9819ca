import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { SAMPLES } from './read-district.ts';

function card(id: string) {
  const file = `${id}.json`;
  const read = readVehicle(readFileSync(resolve(SAMPLES, 'vehicles', file), 'utf8'), file);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

describe('The sample vehicles', () => {
  it.each(['panel-van-6.0', 'coach-built-7.0', 'coach-built-7.4', 'a-class-4.25t'])(
    '%s is a whole card',
    (id) => {
      const vehicle = card(id);
      for (const field of [
        'runningOrder',
        'rearClearanceM',
        'bellyClearanceM',
        'gasKg',
        'unladenKg',
        'trackM',
      ] as const)
        expect(vehicle[field], field).toBeDefined();
      expect(vehicle.axleKg.front + vehicle.axleKg.rear).toBeGreaterThanOrEqual(vehicle.grossKg);
    },
  );

  it('the empty weight stays below every plate', () => {
    for (const id of ['panel-van-6.0', 'coach-built-7.0', 'coach-built-7.4', 'a-class-4.25t']) {
      const { runningOrder, axleKg, grossKg } = card(id);
      expect(runningOrder?.frontKg).toBeLessThan(axleKg.front);
      expect(runningOrder?.rearKg).toBeLessThan(axleKg.rear);
      expect((runningOrder?.frontKg ?? 0) + (runningOrder?.rearKg ?? 0)).toBeLessThan(grossKg);
    }
  });

  it('the 7.4 m coach-built carries its rack, and only the A-class is over 3.5 t', () => {
    expect(card('coach-built-7.4').rack).toMatchObject({ lengthM: 0.7, widthM: 2, fitted: true });
    expect(card('coach-built-7.4').grossKg).toBe(3500);
    expect(card('a-class-4.25t').grossKg).toBe(4250);
  });

  it('the load of a family of four is what the 7.4 m cannot quite take with a full water tank', () => {
    const load = JSON.parse(readFileSync(resolve(SAMPLES, 'loads/family-of-four.json'), 'utf8')) as {
      format: string;
      version: number;
      items: { name: string; massKg: number; xM: number }[];
    };
    expect(load).toMatchObject({ format: 'lanegauge.load', version: 1 });
    const { runningOrder, grossKg } = card('coach-built-7.4');
    const empty = (runningOrder?.frontKg ?? 0) + (runningOrder?.rearKg ?? 0);
    const loadKg = load.items.reduce((sum, item) => sum + item.massKg, 0);
    const waterKg = load.items.find((item) => item.name.startsWith('Fresh water'))?.massKg ?? 0;
    expect(empty + loadKg).toBeGreaterThan(grossKg);
    expect(empty + loadKg - waterKg).toBeLessThan(grossKg);
  });
});
